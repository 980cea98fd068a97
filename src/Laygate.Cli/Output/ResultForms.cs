using Laygate.Cli.Arguments;
using Laygate.Cli.Files;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Cli.Output;

/// <summary>The forms of one run: those for standard output are written as reports are made; a file takes its place when every form is whole, so that a run that cannot finish leaves none behind.</summary>
internal sealed class ResultForms : IDisposable
{
    private readonly Streams streams;
    private readonly List<IRunForm> forms = [];
    private readonly List<(string Path, AtomicFile File)> files = [];

    /// <summary>Begins every form.</summary>
    /// <exception cref="ArgumentProblem">A file cannot be written.</exception>
    public ResultForms(CheckArguments arguments, RunHead head, Streams streams)
    {
        this.streams = streams;
        try
        {
            foreach (var target in arguments.Outputs.OrderBy(target => target.File is not null))
            {
                forms.Add(Begin(target, head, arguments));
            }
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>Adds the next file.</summary>
    /// <exception cref="ArgumentProblem">It cannot be written.</exception>
    public void Add(FileResult result, ComparisonResult? changes) => forms.ForEach(form => form.Add(result, changes));

    /// <summary>Ends every form, then lets the files take their places.</summary>
    /// <exception cref="ArgumentProblem">They cannot be written.</exception>
    public void End()
    {
        forms.ForEach(form => form.End());
        streams.Out.Flush();
        files.ForEach(file => Guarded(file.Path, () =>
        {
            file.File.Finish();
            return true;
        }));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        forms.ForEach(form => form.Dispose());
        files.ForEach(file => file.File.Dispose());
    }

    private IRunForm Begin(OutputTarget target, RunHead head, CheckArguments arguments)
    {
        if (target.File is not { } path)
        {
            return new ResultForm(target.Format, Settings(arguments, streams.Width), streams.Colour).Begin(head, streams.Out, Path.GetTempPath());
        }

        var file = Guarded(path, () => new AtomicFile(path));
        files.Add((path, file));
        return new ResultForm(target.Format, Settings(arguments, Streams.UsualWidth), Colour: false)
            .Begin(head, new GuardedStream(file.Stream, () => throw ResultOutput.Refused(path)), file.Folder);
    }

    private static TerminalSettings Settings(CheckArguments arguments, int width) => new(width, arguments.All) { Full = arguments.Full, Explain = arguments.Explain };

    private static T Guarded<T>(string path, Func<T> write)
    {
        try
        {
            return write();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ResultOutput.Refused(path);
        }
    }
}
