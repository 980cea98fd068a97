using System.IO.Compression;
using System.Text;
using Laygate.Checking;
using Laygate.ConformanceTests;
using Laygate.Reading.Parts;
using Laygate.Reading.Sets;
using Laygate.Rules.Results;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>A file of parts that a sound plan uses.</summary>
internal sealed class PartTarget : Target
{
    /// <summary>The plan.</summary>
    public static readonly byte[] Plan = Encoding.UTF8.GetBytes("""
        format: 1
        uses: [../firm/parts.yaml]
        plan: { id: p, stage: concept }
        mixes: [ac11]
        courses: [{ id: upper, mix: ac11, thickness: 45 mm }]
        supply: { plants: [west], trucks: [{ part: trucks-a, count: 8 }], feeder: f1 }
        rolling: { rollers: [{ part: r7, id: roller-1 }] }
        measures: [spotter]
        """);

    /// <summary>Files of parts.</summary>
    public static SeedSet Parts { get; } = new([new Seed("parts", """
        parts: 1
        mixes:
          - { id: ac11, kind: asphalt-concrete, aggregate_size: { sieve: 11 mm, basis: upper-sieve }, delivery: { lowest: 140 °C, highest: 170 °C, place: in-load } }
        plants:
          - { id: west, mixes: [ac11], nameplate: 240 t/h }
        trucks:
          - { id: trucks-a, plant: west, mix: ac11, count: 9, payload: 22 t, insulated: yes, haul_out: 31 min }
        feeders:
          - { id: f1, rate: 500 t/h, storage: 12 t }
        rollers:
          - { id: tandem, kind: tandem, mass: 10 t, drum_width: 1.68 m }
          - { id: r7, part: tandem, mass: 9.5 t, mode: static }
        measures:
          - id: spotter
            kind: reversing-spotter
            what: one spotter
            where: at the paver
            who: crew lead
        """)]);

    /// <inheritdoc/>
    public override string Name => "parts";

    /// <inheritdoc/>
    public override int Share => 45;

    /// <inheritdoc/>
    public override SeedSet Seeds => Parts;

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes) => Judge("jobs/p.yaml", Plan, new OneFile(bytes), name => name is "firm/parts.yaml" ? bytes : Plan);

    /// <summary>Checks a plan with its parts, each refusal at its place in its own file.</summary>
    public static Answer Judge(string name, byte[] plan, IPartFiles parts, Func<string, byte[]> textOf)
    {
        var result = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true, Parts = parts }, tools: Tools).Run(name, plan);
        if (result.Problems.Count == 0)
        {
            Places(result.Reports.SelectMany(report => report.Findings).Where(finding => finding.Position is { File: null }).Select(finding => finding.Position), plan);
            RoundTrips.Of(result);
            return Answer.Accepted;
        }

        Require(result.Reports.Count == 0, "a report of a plan that could not be read");
        foreach (var file in result.Problems.GroupBy(problem => problem.File, StringComparer.Ordinal))
        {
            Refusal.Check([.. file], textOf(file.Key));
        }

        return Answer.Refused;
    }

    private static readonly PlanTools Tools = new();

    private sealed class OneFile(byte[] bytes) : IPartFiles
    {
        public PartText Read(string from, string name) => name is "../firm/parts.yaml" ? new PartText("firm/parts.yaml", bytes) : new PartText(name, null, "There is no such file.");
    }
}

/// <summary>A set of files in an archive: its bytes, names and contents.</summary>
internal sealed class SetTarget : Target
{
    private static readonly string[] Names = ["../x.yaml", "/x", "C:\\x", "firm\\parts.yaml", "FIRM/parts.yaml", "firm", "jobs/p.yaml", "firm/parts.yaml", "a\0b", "ä/é.yaml", "firm//x", "x/", ".", "con", new('n', 300)];

    /// <inheritdoc/>
    public override string Name => "set";

    /// <inheritdoc/>
    public override int Share => 30;

    /// <inheritdoc/>
    public override SeedSet Seeds => PartTarget.Parts;

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        // What else is done follows from the input alone; a sound seed goes in as it is.
        var random = new Random(Choice(bytes, int.MaxValue));
        var way = Seeds.All.Any(seed => Encoding.UTF8.GetBytes(seed.Text).AsSpan().SequenceEqual(bytes)) ? 0 : random.Next(6);
        var zip = Zip(bytes, way == 1 ? Names[random.Next(Names.Length)] : null);
        zip = way == 2 ? ByteDamage.Damaged(zip, random) : zip;
        var (files, problems) = SetArchive.Unpack("set.zip", zip);
        Require(files.Count == 0 || problems.Count == 0, "files of an archive that was refused");
        if (problems.Count > 0)
        {
            return Refused(problems);
        }

        Require(files.Sum(file => (long)file.Bytes.Length) <= SetLimits.Bytes && files.Count <= SetLimits.Files, "more than the bounds allow");
        var (set, wrong) = PlanSet.Of("set.zip", files, random.Next(2) == 0 ? "jobs/p.yaml" : null);
        return set is null ? Refused(wrong) : PartTarget.Judge(set.Plan.Name, set.Plan.Bytes, set, name => files.FirstOrDefault(file => file.Name == name)?.Bytes ?? bytes);
    }

    private static Answer Refused(IReadOnlyList<Problem> problems)
    {
        Refusal.Check(problems, [], _ => true);
        return Answer.Refused;
    }

    private static byte[] Zip(byte[] parts, string? more)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (var (name, content) in new[] { ("jobs/p.yaml", PartTarget.Plan), ("firm/parts.yaml", parts), (more, parts) })
            {
                if (name is not null)
                {
                    using var entry = zip.CreateEntry(name).Open();
                    entry.Write(content);
                }
            }
        }

        return bytes.ToArray();
    }
}
