using System.Globalization;

namespace Laygate.Mutation;

/// <summary>One test as the run with no mutant saw it.</summary>
/// <param name="Assembly">Name of the assembly.</param>
/// <param name="Type">Name of the class.</param>
/// <param name="Id">What the framework names the case by.</param>
/// <param name="Name">What people read.</param>
/// <param name="Cost">Processor time, ms.</param>
/// <param name="Passed">Whether it passed.</param>
/// <param name="Hits">The mutants that it reaches.</param>
internal sealed record TestRecord(string Assembly, string Type, string Id, string Name, double Cost, bool Passed, IReadOnlyList<int> Hits)
{
    /// <summary>The name of the finding of a class's tests in place of a test: what is reached there stays for the whole process.</summary>
    public const string Discovery = "-";

    /// <summary>Assembly and class of what is reached outside every test and stays for the whole process: any test may notice it.</summary>
    public const string Anywhere = "*\t*";

    public static TestRecord Parse(string line)
    {
        var parts = line.Split('\t');
        return new(parts[0], parts[1], parts[2], parts[3], double.Parse(parts[4], CultureInfo.InvariantCulture), parts[5] == "passed",
            [.. parts[6].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => int.Parse(id, CultureInfo.InvariantCulture))]);
    }

    /// <summary>A text in one line of at most 200 characters.</summary>
    public static string OneLine(string text)
    {
        var line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length > 200 ? line[..200] : line;
    }

    public override string ToString() =>
        string.Join('\t', Assembly, Type, Id, Name, Cost.ToString("F2", CultureInfo.InvariantCulture), Passed ? "passed" : "failed", string.Join(' ', Hits));
}
