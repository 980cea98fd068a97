using System.Globalization;
using Laygate.Checking;
using Laygate.Checking.Starting;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Reading.Parts;

namespace Laygate.Cli.Verbs;

/// <summary>Finds the measures that a plan lacks, and prints them or adds them to it.</summary>
internal static class NewMeasures
{
    public static int Run(Host host, string file, IReadOnlyList<string> names, bool inPlace)
    {
        var (bound, _) = RuleBookOnDisk.Open(names);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        if (new PlanFiles(host.Streams.Input, "standard input").Find([file]) is not [var input])
        {
            throw new ArgumentProblem($"`{file}` names more than one file.");
        }

        var (bytes, problem) = PlanBytes.Read(input);
        if (bytes is null)
        {
            return host.Streams.Refuse([problem!]);
        }

        var files = new PartFilesOnDisk();
        var found = MeasureStarter.Find(new PlanTools(), book, input.Name, bytes, FirmParts.Of(input.Name, PartLists.Named(bytes), files));
        if (found.Problems.Count > 0)
        {
            return host.Streams.Refuse(found.Problems);
        }

        foreach (var sentence in found.Lacking)
        {
            host.Streams.Error.WriteLine($"laygate: {input.Name}, {sentence}");
        }

        return inPlace ? Write(host, input, found) : Print(host, found);
    }

    private static int Print(Host host, MissingMeasures found)
    {
        host.Streams.Error.WriteLine($"laygate: {Counted(found)}");
        host.Streams.Text(found.Count == 0 ? string.Empty : $"measures:\n{found.Entries}");
        return ExitCodes.Clean;
    }

    private static int Write(Host host, PlanInput input, MissingMeasures found)
    {
        if (found.Count > 0 && input.Identity is "-")
        {
            throw new ArgumentProblem("Standard input cannot be written to: leave --write out, and the measures are printed.");
        }

        if (found.Count > 0)
        {
            NewFiles.Replace(input.Identity, found.Text ?? throw new ArgumentProblem($"The list `measures` of `{input.Name}` stands on one line: write each measure on a line of its own, or leave --write out, and the measures are printed."));
        }

        host.Streams.Text($"{Counted(found)}{(found.Count > 0 ? $" Added to {input.Name}." : string.Empty)}\n");
        return ExitCodes.Clean;
    }

    private static string Counted(MissingMeasures found) => found.Count == 0 ? "No measure is missing that the stated conditions ask for."
        : string.Create(CultureInfo.InvariantCulture, $"{found.Count} {(found.Count == 1 ? "measure is" : "measures are")} missing: {found.Parts} from the files that the plan uses, {found.Count - found.Parts} to fill in.");
}
