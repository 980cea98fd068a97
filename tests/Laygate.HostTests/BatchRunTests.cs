using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json.Nodes;
using Laygate.Cli;
using Laygate.Cli.Checking;
using Laygate.Cli.Output;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;

namespace Laygate.HostTests;

/// <summary>A batch is written while it is checked: in order, with few reports alive, and no further than it can be written.</summary>
public sealed class BatchRunTests : IDisposable
{
    private const int Plans = 300;
    private static readonly string[] Formats = ["json", "sarif", "junit", "code-quality", "annotations", "markdown", "html"];

    private readonly string folder = Directory.CreateTempSubdirectory("laygate-batch-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Results_are_handed_on_in_order_however_slow_the_first_is_and_few_wait()
    {
        var (begun, handed, most) = (0, new List<int>(), 0);
        using var full = new ManualResetEventSlim();
        InOrder.Run(
            200,
            number =>
            {
                if (Interlocked.Increment(ref begun) == InOrder.Window)
                {
                    full.Set();
                }

                // The first ends only when as many are begun as may be: they cannot be handed on before it.
                Assert.True(number > 0 || full.Wait(Patience.Longest));
                return number;
            },
            (number, result) =>
            {
                Assert.Equal(number, result);
                most = Math.Max(most, Volatile.Read(ref begun) - handed.Count);
                handed.Add(result);
            });
        Assert.Equal(Enumerable.Range(0, 200), handed);
        Assert.Equal(InOrder.Window, most);
    }

    [Fact]
    public void What_one_piece_throws_is_thrown_in_its_turn_and_nothing_follows()
    {
        var (begun, handed) = (0, new List<int>());
        var error = Assert.Throws<InvalidOperationException>(() => InOrder.Run(
            1000,
            number => Interlocked.Increment(ref begun) > 0 && number == 5 ? throw new InvalidOperationException("five") : number,
            (_, result) => handed.Add(result)));
        Assert.Equal("five", error.Message);
        Assert.Equal([0, 1, 2, 3, 4], handed);
        Assert.InRange(begun, 6, 5 + InOrder.Window);
    }

    [Fact]
    public void Reports_of_a_batch_go_when_they_are_written_in_every_form()
    {
        var pipeline = new CountingPipeline { CountAliveAt = Plans };
        Assert.Equal(1, Run(pipeline, Stream.Null, [.. Names(), .. Formats.SelectMany(format => (string[])["--output", $"{format}={folder}/out.{format}"])]).Code);
        Assert.Equal(Plans, pipeline.Checked);
        Assert.InRange(pipeline.Alive, 1, 2 * InOrder.Window);

        // Every form has every plan, in the order of the arguments.
        var files = JsonNode.Parse(File.ReadAllText($"{folder}/out.json"))!["files"]!.AsArray().Select(file => file!["file"]!.GetValue<string>());
        Assert.Equal(Names(), files, StringComparer.Ordinal);
        foreach (var format in Formats.Where(format => format is not ("json" or "markdown")))
        {
            var text = File.ReadAllText($"{folder}/out.{format}");
            var places = Names().Select(name => text.IndexOf(Path.GetFileName(name), StringComparison.Ordinal)).ToList();
            Assert.DoesNotContain(-1, places);
        }

        Assert.Empty(Directory.GetFiles(folder, ".*"));
    }

    [Fact]
    public void A_closed_output_stops_a_batch()
    {
        var pipeline = new CountingPipeline();
        using var closed = new ClosedStream(after: 200_000);
        using var guarded = new GuardedStream(closed, () => throw new Cli.Arguments.ArgumentProblem("The result cannot be written to standard output."));
        var (code, error) = Run(pipeline, guarded, [.. Names(), "--format", "json"]);
        Assert.Equal(2, code);
        Assert.Contains("cannot be written", error, StringComparison.Ordinal);
        Assert.InRange(pipeline.Checked, 1, closed.Reports + InOrder.Window + 1);
        Assert.True(pipeline.Checked < Plans);
    }

    [Fact]
    public void A_batch_that_cannot_finish_leaves_no_file()
    {
        var pipeline = new CountingPipeline { ThrowsAt = Plans - 10 };
        Assert.Equal(3, Run(pipeline, Stream.Null, [.. Names(), .. Formats.SelectMany(format => (string[])["--output", $"{format}={folder}/out.{format}"])]).Code);
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void What_must_wait_goes_to_a_file_without_a_name_when_it_is_large()
    {
        using var spool = new Spool(folder);
        var piece = new byte[100_000];
        for (var number = 0; number < 30; number++)
        {
            Array.Fill(piece, (byte)number);
            spool.Write(piece);
            Assert.Equal(spool.Length > Spool.MostInMemory, spool.IsFile);
        }

        Assert.True(OperatingSystem.IsWindows() || Directory.GetFiles(folder).Length == 0);
        spool.Position = 100_000;
        using var copy = new MemoryStream();
        spool.CopyTo(copy);
        Assert.Equal(Enumerable.Range(1, 29).SelectMany(number => Enumerable.Repeat((byte)number, 100_000)), copy.ToArray());
    }

    private string[] Names() => [.. Enumerable.Range(0, Plans).Select(number =>
    {
        var path = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, "plans")).FullName, $"plan-{number:000}.yaml");
        if (!File.Exists(path))
        {
            File.WriteAllText(path, "plan");
        }

        return path;
    })];

    private static (int Code, string Error) Run(ICheckPipeline pipeline, Stream output, params IEnumerable<string> arguments)
    {
        using var error = new StringWriter { NewLine = "\n" };
        var streams = new Streams { Input = () => Stream.Null, Out = output, Error = error };
        var code = new App(pipeline, streams, TimeProvider.System, trace: false).Run([.. arguments.Prepend("check")]);
        return (code, error.ToString());
    }

    /// <summary>Finds the same in every plan, and knows how many of its reports are still there.</summary>
    private sealed class CountingPipeline : ICheckPipeline
    {
        private readonly List<WeakReference> reports = [];
        private int checks;

        public int Checked => checks;

        public int CountAliveAt { get; init; }

        public int Alive { get; private set; }

        public int ThrowsAt { get; init; } = int.MaxValue;

        public CheckSession Open(CheckRequest request) => new(Check, []) { Rules = FakePipeline.Rules };

        private FileResult Check(string file, byte[] bytes)
        {
            var number = Interlocked.Increment(ref checks);
            if (number >= ThrowsAt)
            {
                throw new InvalidOperationException();
            }

            var result = Found(file);
            if (number == CountAliveAt)
            {
                Alive = Count();
            }

            return result;
        }

        [MethodImpl(MethodImplOptions.NoInlining)]
        private FileResult Found(string file)
        {
            var report = Samples.Report() with { File = file, Counts = new Counts(1, 0, 0, 0, 0, 0, 0, 0) };
            lock (reports)
            {
                reports.Add(new WeakReference(report));
            }

            return new FileResult(file, [report], []);
        }

        private int Count()
        {
            GC.Collect();
            lock (reports)
            {
                return reports.Count(report => report.IsAlive);
            }
        }
    }

    /// <summary>Takes some bytes and is then closed, as a pipe is whose reader has gone.</summary>
    private sealed class ClosedStream(int after) : MemoryStream
    {
        public int Reports => Encoding.UTF8.GetString(ToArray()).Split("\"reports\":").Length - 1;

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            if (Length + buffer.Length > after)
            {
                throw new IOException("closed");
            }

            base.Write(buffer);
        }
    }
}
