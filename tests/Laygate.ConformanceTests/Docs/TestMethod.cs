using System.Globalization;
using System.Text.RegularExpressions;

namespace Laygate.ConformanceTests.Docs;

/// <summary>A test as it stands in its file: where, its name, what its comments and those of its class say, and its code.</summary>
internal sealed partial record TestMethod(int Line, string Name, string Comments, string Code)
{
    private static readonly string[] Equalities = ["Assert.Equal(", "Near("];

    /// <summary>All tests of a file: what begins with four blanks and has the attribute of a test.</summary>
    public static IReadOnlyList<TestMethod> Of(string text)
    {
        var (code, comments) = CSharpText.Of(text);
        var (codeLines, commentLines) = (code.Split('\n'), comments.Split('\n'));
        var ofClass = string.Join('\n', commentLines.TakeWhile((_, line) => !ClassHead().IsMatch(codeLines[line])));
        var starts = Enumerable.Range(1, codeLines.Length - 1)
            .Where(line => IsHead(codeLines, commentLines, line) && !IsLead(codeLines, commentLines, line - 1)).Append(codeLines.Length).ToList();
        return
        [
            .. starts.Zip(starts.Skip(1), (from, to) => (From: from, Code: string.Join('\n', codeLines[from..to]), Comments: string.Join('\n', commentLines[from..to])))
                .Where(member => member.Code.Contains("[Fact", StringComparison.Ordinal) || member.Code.Contains("[Theory", StringComparison.Ordinal))
                .Select(member => new TestMethod(member.From + 1, MethodName().Match(member.Code).Groups["name"].Value, ofClass + '\n' + member.Comments, member.Code)),
        ];
    }

    /// <summary>Literal numbers that the test expects and that it neither works out nor gives itself: 0, ±1, 2, counts of a list and bounds of rounding below 1e-5 are none.</summary>
    public IReadOnlyList<string> Figures()
    {
        var (bare, rows) = (InlineRow().Replace(Code, string.Empty), Rows());
        return [.. Expected().SelectMany(expected => Literal(expected, bare).Concat(FromRows(expected, rows))).Distinct(StringComparer.Ordinal)];
    }

    private IEnumerable<string> Expected()
    {
        foreach (var call in Equalities.SelectMany(name => Calls(name)))
        {
            var isCount = call.Count > 1 && (call[1].EndsWith(".Count", StringComparison.Ordinal) || call[1].EndsWith(".Length", StringComparison.Ordinal) || call[1].Contains(".Count(", StringComparison.Ordinal));
            if (!isCount && call.Count > 0)
            {
                yield return call[0];
            }
        }

        foreach (var bound in Calls("Assert.InRange(").SelectMany(call => call.Skip(1)))
        {
            yield return bound;
        }
    }

    // A number, a tuple or a list of numbers; a figure that stands elsewhere in the test is one that the test gives.
    private static IEnumerable<string> Literal(string expected, string body)
    {
        if (!OnlyLiterals().IsMatch(expected))
        {
            return [];
        }

        return Numbers(expected).Where(number => Regex.Count(body, @"(?<![\w.])" + Regex.Escape(number) + @"(?![\w.])", RegexOptions.None, Patience.Longest) <= Occurrences(number));

        int Occurrences(string number) => Regex.Count(expected, @"(?<![\w.])" + Regex.Escape(number) + @"(?![\w.])", RegexOptions.None, Patience.Longest);
    }

    private static IEnumerable<string> FromRows(string expected, IReadOnlyDictionary<string, string> rows) =>
        rows.Where(row => row.Value.Length > 0 && (expected == row.Key || expected == "-" + row.Key)).Select(row => $"{row.Key} {row.Value}");

    // The first figure that the rows of a theory give to each parameter.
    private Dictionary<string, string> Rows()
    {
        var names = MethodName().Match(Code).Groups["parameters"].Value.Split(',').Select(one => one.Split('=')[0].Trim().Split(' ')[^1]).ToList();
        var rows = Calls("InlineData(").ToList();
        return names.Select((name, index) => (Name: name, Value: rows.Where(row => index < row.Count && OnlyLiterals().IsMatch(row[index])).SelectMany(row => Numbers(row[index])).FirstOrDefault() ?? string.Empty))
            .Where(pair => pair.Name.Length > 0).ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal);
    }

    private static IEnumerable<string> Numbers(string text) => Number().Matches(Quotes().Replace(text, string.Empty)).Select(match => match.Value)
        .Where(number => double.Parse(number.Replace("_", string.Empty, StringComparison.Ordinal), CultureInfo.InvariantCulture) is not (0 or 1 or -1 or 2 or (> -1e-5 and < 1e-5)));

    private IEnumerable<IReadOnlyList<string>> Calls(string name)
    {
        for (var at = Code.IndexOf(name, StringComparison.Ordinal); at >= 0; at = Code.IndexOf(name, at + 1, StringComparison.Ordinal))
        {
            if (at == 0 || !(char.IsLetterOrDigit(Code[at - 1]) || Code[at - 1] == '.'))
            {
                yield return Arguments(at + name.Length);
            }
        }
    }

    private List<string> Arguments(int at)
    {
        var (found, from, depth) = (new List<string>(), at, 0);
        for (; at < Code.Length; at++)
        {
            if (Code[at] == '"')
            {
                at = Math.Max(at, Code.IndexOf('"', at + 1));
            }
            else if (Code[at] is '(' or '[' or '{')
            {
                depth++;
            }
            else if (Code[at] is ')' or ']' or '}' && depth-- == 0)
            {
                break;
            }
            else if (Code[at] == ',' && depth == 0)
            {
                found.Add(Code[from..at].Trim());
                from = at + 1;
            }
        }

        found.Add(Code[from..Math.Min(at, Code.Length)].Trim());
        return found;
    }

    private static bool IsHead(string[] code, string[] comments, int line) =>
        Member().IsMatch(code[line]) || comments[line].StartsWith("    //", StringComparison.Ordinal);

    private static bool IsLead(string[] code, string[] comments, int line) =>
        comments[line].StartsWith("    //", StringComparison.Ordinal) || code[line].StartsWith("    [", StringComparison.Ordinal);

    [GeneratedRegex(@"^(public |internal )?(sealed |static |partial )*(class|record)\b", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex ClassHead();

    [GeneratedRegex(@"^    (\[|public |private |internal |protected )", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Member();

    [GeneratedRegex(@"\bpublic (async )?[\w<>]+ (?<name>\w+)\((?<parameters>[^)]*)\)", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex MethodName();

    [GeneratedRegex(@"^[-+0-9._eEdf()\[\]{},:\s]*(null)?[-+0-9._eEdf()\[\]{},:\s]*$", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex OnlyLiterals();

    [GeneratedRegex(@"(?<![\w.])-?\d[\d_]*(\.\d+)?(e-?\d+)?(?![\w.])", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Number();

    [GeneratedRegex("\"[^\"]*\"", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Quotes();

    [GeneratedRegex(@"InlineData\(.*\)\]", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex InlineRow();
}
