using System.Text;

namespace Laygate.HostTests;

/// <summary>Bad input through the built program: a clear error with its place, exit code 2, no stack trace, within the watchdog.</summary>
public sealed class BadInputTests
{
    private const string Head = "format: 1\nplan: { id: job, stage: concept }\n";

    /// <summary>Name, content, line of the error (0: the file as a whole or any line), and a word that the message must hold.</summary>
    private static readonly Dictionary<string, (byte[] Bytes, int Line, string Word)> Inputs = new(StringComparer.Ordinal)
    {
        ["empty"] = (Bytes(string.Empty), 0, "plan"),
        ["comment only"] = (Bytes("# nothing here\n"), 0, "plan"),
        ["not YAML"] = (Bytes(Head + "courses: [ {id: a\n"), 0, ""),
        ["a list where a plan belongs"] = (Bytes("- format: 1\n- plan\n"), 1, ""),
        ["a word where a plan belongs"] = (Bytes("hello\n"), 1, ""),
        ["over 1 MiB"] = (Bytes(Head + "# " + new string('x', 1 << 20) + "\n"), 0, "1 MiB"),
        ["300,000 brackets"] = (Bytes(new string('[', 300_000)), 1, ""),
        ["alias bomb"] = (Bytes(Bomb()), 0, ""),
        ["cycle"] = (Bytes("format: 1\nplan: &a { id: job, stage: concept, again: *a }\n"), 2, ""),
        ["invalid UTF-8"] = ([.. Bytes("format: 1\nplan: { id: "), 0xC3, 0x28, .. Bytes(" }\n")], 2, "UTF-8"),
        ["NUL"] = (Bytes("format: 1\nplan: { id: a\0b }\n"), 2, ""),
        ["control character"] = (Bytes("format: 1\nplan: { id: a\u0007b }\n"), 2, ""),
        ["tab indent"] = (Bytes("format: 1\nplan:\n\tid: job\n"), 3, "tab"),
        ["no as a word"] = (Course("aggregate_size: { sieve: 11 mm, basis: no }"), 3, "no"),
        ["22:30 as a number"] = (Course("age_limit: 22:30"), 3, "22:30"),
        ["017 as a measure"] = (Course("age_limit: 017"), 3, "017"),
        ["1e3 as a measure"] = (Course("age_limit: 1e3"), 3, "1e3"),
        ["1,5 in"] = (Thickness("\"1,5 in\""), 4, "1,5"),
        ["40mm"] = (Thickness("40mm"), 4, "40 mm"),
        ["unknown key"] = (Course("knid: asphalt-concrete"), 3, "kind"),
    };

    public static TheoryData<string> Names => [.. Inputs.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Bad_input_gives_one_clear_error_with_its_place(string name)
    {
        var (bytes, line, word) = Inputs[name];
        var result = BuiltProgram.Run(bytes, Path.GetTempPath(), "check", "-", "--stdin-name", "bad.yaml");
        Refused(result, word);
        var places = result.Error.Split('\n').Where(text => text.StartsWith("bad.yaml:", StringComparison.Ordinal)).ToList();
        Assert.Single(places);
        if (line > 0)
        {
            Assert.Matches($"^bad\\.yaml:{line}:[0-9]+: ", places[0]);
        }
    }

    [Theory]
    [InlineData(".", "folder")]
    [InlineData("missing.yaml", "no such file")]
    [InlineData("*.nothing", "No file matches")]
    public void What_is_no_file_is_refused(string path, string word)
    {
        var folder = Directory.CreateTempSubdirectory("laygate-test-");
        Refused(BuiltProgram.Run(null, folder.FullName, "check", path), word);
        folder.Delete();
    }

    private static void Refused(BuiltProgram.Result result, string word)
    {
        Assert.Equal(2, result.Code);
        Assert.Empty(result.Out);
        Assert.Contains(word, result.Error, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("   at ", result.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", result.Error, StringComparison.Ordinal);
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Course(string key) =>
        Bytes(Head + $"mixes: [ {{ id: m, {key} }} ]\ncourses: [ {{ id: c, mix: m, thickness: 40 mm }} ]\n");

    private static byte[] Thickness(string value) =>
        Bytes(Head + $"mixes: [ {{ id: m }} ]\ncourses: [ {{ id: c, mix: m, thickness: {value} }} ]\n");

    private static string Bomb()
    {
        var text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 10; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n");
        }

        return text.ToString();
    }
}
