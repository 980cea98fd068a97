using System.Globalization;
using System.Text;
using Laygate.FuzzTests.Fuzzing;
using Laygate.Rules.Results;
using Xunit.Abstractions;

namespace Laygate.FuzzTests;

/// <summary>
/// No input crashes the program, and every refusal has words and a place. A usual run tries 2,000 inputs, the full run (<c>LAYGATE_FULL_RUN</c>) 20,000;
/// LAYGATE_FUZZ in the environment says another number. For longer runs, and to try one input again: <c>dotnet run --project tests/Laygate.FuzzTests -- --help</c>.
/// </summary>
public sealed class InputTests(ITestOutputHelper output, AllTargets all) : IClassFixture<AllTargets>
{
    private const int Seed = 20261129;
    private readonly TargetList targets = all.Targets;

    private static int Count => Environment.GetEnvironmentVariable("LAYGATE_FUZZ") is { Length: > 0 } asked ? int.Parse(asked, CultureInfo.InvariantCulture)
        : FullRun.IsAsked ? 20_000 : 2_000;

    [Fact]
    public void No_input_crashes_the_program_and_every_refusal_has_words_and_a_place()
    {
        var run = new FuzzRun(new InputMaker(Seed, targets.All));
        run.Try(0, Count, 2, () => true);
        foreach (var (name, tally) in run.Tallies)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {tally.Inputs} inputs, {tally.Accepted} taken, {tally.Refused} refused, at most {tally.MostAllocated >> 20} MB, {tally.Seconds:F1} s"));
        }

        NoComplaints(run);
        Assert.Equal(Count, run.Tallies.Sum(tally => tally.Value.Inputs));

        // A fuzzer that only ever meets the first door tries nothing behind it.
        Assert.All(run.Tallies.Where(tally => tally.Value.Inputs >= 100), tally => Assert.True(tally.Value.Accepted > 0.05 * tally.Value.Inputs && tally.Value.Refused > 0.05 * tally.Value.Inputs, $"{tally.Key}: {tally.Value.Accepted} taken, {tally.Value.Refused} refused"));
    }

    [Fact]
    public void Inputs_that_once_failed_do_not_fail_again()
    {
        var run = new FuzzRun(new InputMaker(Seed, targets.All));
        foreach (var (file, target, was) in Corpus.All())
        {
            run.Try(new FuzzInput(0, targets.All.Single(one => one.Name == target), was, File.ReadAllBytes(Path.Combine(Corpus.Folder, file))));
        }

        NoComplaints(run);
        Assert.Equal(
            Directory.GetFiles(Corpus.Folder).Select(Path.GetFileName).Where(name => name != "index.txt").Order(StringComparer.Ordinal),
            Corpus.All().Select(one => one.File).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_seed_is_taken()
    {
        var run = new FuzzRun(new InputMaker(Seed, targets.All));
        foreach (var (target, seed) in targets.All.Where(target => target.Name is not "http json").SelectMany(target => Some(target.Seeds.All).Select(seed => (target, seed))))
        {
            run.Try(new FuzzInput(0, target, seed.Name, Encoding.UTF8.GetBytes(seed.Text)));
        }

        NoComplaints(run);
        Assert.All(run.Tallies, tally => Assert.True(tally.Value.Refused == 0, $"{tally.Key}: {tally.Value.Refused} seeds are refused"));
    }

    [Fact]
    public void The_same_seed_and_number_give_the_same_bytes()
    {
        var (one, other) = (new InputMaker(3, targets.All), new InputMaker(3, targets.All));
        Assert.All(Enumerable.Range(0, 300), index => Assert.Equal(one.Make(index).Bytes, other.Make(index).Bytes));
        Assert.True(Enumerable.Range(0, 300).Select(index => Convert.ToHexString(one.Make(index).Bytes)).Distinct(StringComparer.Ordinal).Count() > 280);
    }

    /// <summary>Each thing that must never be is noticed: here a target does it.</summary>
    [Theory]
    [InlineData("throws")]
    [InlineData("no words")]
    [InlineData("no place")]
    [InlineData("place outside")]
    [InlineData("hungry")]
    public void What_must_never_be_is_noticed(string fault)
    {
        var run = new FuzzRun(new InputMaker(Seed, [new Faulty(fault)]));
        run.Try(0, 3, 1, () => true);
        Assert.Equal(3, run.Complaints.Count);
    }

    // At most ten of each target, from its whole list.
    private static IEnumerable<Seed> Some(IReadOnlyList<Seed> seeds) => seeds.Where((_, index) => index % ((seeds.Count / 10) + 1) == 0);

    private static void NoComplaints(FuzzRun run) =>
        Assert.True(run.Complaints.Count == 0, string.Join('\n', run.Complaints.Select(complaint => $"{complaint.Input.Index} {complaint.Input.Target.Name} ({complaint.Input.Changes}): {complaint.What}")));

    private sealed class Faulty(string fault) : Target
    {
        public override string Name => "faulty";

        public override int Share => 1;

        public override SeedSet Seeds { get; } = new([new Seed("seed", "a: 1\nb: [2, 3]\n")]);

        public override long? MostAllocated => 1 << 20;

        public override Answer Try(byte[] bytes)
        {
            switch (fault)
            {
                case "throws": throw new InvalidOperationException("a bug");
                case "no words": Refusal.Check([new Problem("a", " ", null, new Position(1, 1, 1, 1))], bytes); break;
                case "no place": Refusal.Check([new Problem("a", "Wrong.", null, null)], bytes); break;
                case "place outside": Refusal.Check([new Problem("a", "Wrong.", null, new Position(1, 1, 1_000_000, 1))], bytes); break;
                default: GC.KeepAlive(new byte[2 << 20]); break;
            }

            return Answer.Refused;
        }
    }
}

/// <summary>One set of targets for a class of tests.</summary>
public sealed class AllTargets : IAsyncLifetime
{
    internal TargetList Targets { get; } = new();

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync() => await Targets.DisposeAsync();
}
