using Laygate.Checking.Verification;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Verification;
using Laygate.Rules.Results;

namespace Laygate.Cli;

/// <summary>One run of <c>laygate verify</c>.</summary>
internal sealed class VerifyRun(Streams streams, string version)
{
    private const string ShippedFolder = "verification";

    /// <summary>Runs the named cases, or those that ship with the program.</summary>
    /// <returns>The exit code.</returns>
    public int Run(IReadOnlyList<string> names, string format)
    {
        var files = names.Count > 0 ? Named(names) : Shipped();
        if (files is null)
        {
            return ExitCodes.Unreadable;
        }

        var result = new VerificationRunner().Run(files);
        var problems = result.Files.SelectMany(file => file.Problems).ToList();
        if (problems.Count > 0)
        {
            TerminalWriter.Write(streams.Error, streams.ErrorColour, ProblemLines.Lines(problems));
        }

        Write(result, format);
        return result.Tally.Unreadable > 0 ? ExitCodes.Unreadable
            : result.Tally.Off + result.Tally.NotComputed > 0 ? ExitCodes.Findings : ExitCodes.Clean;
    }

    private static List<VerificationFile> Shipped()
    {
        var folder = Path.Combine(AppContext.BaseDirectory, ShippedFolder);
        return
        [
            .. Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories)
                .Select(path => (Name: Path.GetRelativePath(folder, path).Replace('\\', '/'), Path: path))
                .OrderBy(file => file.Name, StringComparer.Ordinal)
                .Select(file => new VerificationFile(file.Name, File.ReadAllBytes(file.Path))),
        ];
    }

    private List<VerificationFile>? Named(IReadOnlyList<string> names)
    {
        var inputs = new PlanFiles(streams.Input, "standard input").Find(names);
        var problems = inputs.Select(input => input.Problem).OfType<Problem>().ToList();
        if (problems.Count > 0)
        {
            TerminalWriter.Write(streams.Error, streams.ErrorColour, ProblemLines.Lines(problems));
            return null;
        }

        return [.. inputs.Select(input => new VerificationFile(input.Name, input.Read!()))];
    }

    private void Write(VerificationResult result, string format)
    {
        if (format is "json")
        {
            VerificationJson.Write(streams.Out, version, result);
        }
        else
        {
            using var writer = new StreamWriter(streams.Out, Streams.Utf8, bufferSize: 16 << 10, leaveOpen: true) { NewLine = "\n" };
            if (format is "markdown")
            {
                writer.Write(VerificationManual.Markdown(result));
            }
            else
            {
                foreach (var line in VerificationText.Lines(result))
                {
                    writer.WriteLine(line);
                }
            }
        }

        streams.Out.Flush();
    }
}
