using System.Globalization;
using System.Security.Cryptography;
using Laygate.Checking.Plots;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Measured;
using Laygate.Engineering.Onward;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records;
using Laygate.Engineering.Records.Happened;
using Laygate.Engineering.SheetData;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Reading.Measures;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Acceptance;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Held;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>A plan together with the record of its shift.</summary>
public sealed class RecordedShift
{
    /// <summary>How long before its start a clock time still belongs to a shift: judgement, loading and set-up take some hours, and no shift lasts 18.</summary>
    private static readonly TimeSpan BeforeStart = TimeSpan.FromHours(6);

    private readonly PlanTools tools;
    private readonly string file;
    private readonly ReadPlan plan;
    private readonly byte[] bytes;
    private readonly RecordFile record;

    private RecordedShift(PlanTools tools, string file, ReadPlan plan, byte[] bytes, RecordFile record)
    {
        (this.tools, this.file, this.plan, this.bytes, this.record) = (tools, file, plan, bytes, record);
        Context = new QuantityContext(plan.Plan, tools.Catalogue, LaygateAssumptions.Set(), seed: 1) { IsQuick = true };
    }

    /// <summary>The plan with what follows from it.</summary>
    internal QuantityContext Context { get; }

    /// <summary>The record.</summary>
    internal ShiftRecord Record => record.Record!;

    /// <summary>Whether the record has temperatures of the mat.</summary>
    public bool HasMatTemperatures => Record.Temperatures.Count > 0;

    /// <summary>Reads a plan and the record of its shift.</summary>
    /// <param name="tools">What reads plans.</param>
    /// <param name="file">Name of the plan.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="parts">Files that plans use.</param>
    /// <param name="folder">The folder of the record; null where there is none yet.</param>
    /// <returns>Both, or why one of them cannot be used.</returns>
    public static (RecordedShift? Shift, IReadOnlyList<Problem> Problems) Open(PlanTools tools, string file, byte[] bytes, IPartFiles parts, IRuleFolder? folder)
    {
        var read = tools.Reader.Read(file, bytes, parts);
        var found = folder is null ? new RecordFile(new ShiftRecord(), [], []) : RecordReader.Read(folder);
        if (read.Problems.Count > 0 || found.Record is null)
        {
            return (null, [.. read.Problems, .. found.Record is null ? found.Refused : []]);
        }

        var laid = read.Plans is [var only] ? only : read.Plans.FirstOrDefault(one => string.Equals(one.Plan.Identity.Id, found.Record.Plan, StringComparison.Ordinal));
        return laid is null
            ? (null, [new Problem(file, "The file holds several plans, and the record does not say which was laid.", $"Write `plan` into the {RecordReader.MappingFile} of the record.", null)])
            : (new RecordedShift(tools, file, laid, bytes, found), []);
    }

    /// <summary>The ledger at a moment.</summary>
    /// <param name="at">The moment as text; null: that of the last row.</param>
    /// <param name="version">Version of the program.</param>
    /// <returns>The ledger, or why there is none.</returns>
    public (LedgerReport? Report, Problem? Problem) Ledger(string? at, string version)
    {
        var moment = at is null ? null : MomentOf(at);
        if (at is not null && moment is null)
        {
            return (null, EventReader.NoMoment("--at", at));
        }

        if (ShiftLedgers.Of(Context, Record, moment) is not { } ledger)
        {
            return (null, new Problem(RecordReader.MappingFile, moment is null ? "The record has no row with a time." : "The record has no row before this moment.", "Add rows, or give a later moment with --at.", null));
        }

        return (new LedgerReport(plan.Plan.Identity.Id, plan.Plan.Identity.Title, plan.Plan.Identity.Revision, Hash, version, Record, ledger, record.Refused, record.Notes), null);
    }

    /// <summary>The rest of the shift from a moment on.</summary>
    /// <param name="at">The moment as text; null: that of the last row.</param>
    /// <param name="texts">What no file of the record holds.</param>
    /// <param name="book">The merged rule book: what its specifications assume holds.</param>
    /// <param name="version">Version of the program.</param>
    /// <returns>The rest of the shift, or why there is none.</returns>
    public (OnwardReport? Report, IReadOnlyList<Problem> Problems) Onward(string? at, EventTexts texts, RuleBook book, string version)
    {
        var moment = at is null ? null : MomentOf(at);
        var reader = new EventReader(MomentOf);
        var events = reader.Read(texts);
        Problem[] wrong = [.. at is not null && moment is null ? [EventReader.NoMoment("--at", at)] : Array.Empty<Problem>(), .. reader.Problems];
        if (wrong.Length > 0)
        {
            return (null, wrong);
        }

        var (result, problem, id) = Onwards.Of(By(book), Record, moment, events);
        return result is null
            ? (null, [Said(problem!.Value, id)])
            : (new OnwardReport(plan.Plan.Identity.Id, plan.Plan.Identity.Title, plan.Plan.Identity.Revision, Hash, version, Record, result, record.Refused, record.Notes) { BookHash = book.Hash }, []);
    }

    private Problem Said(OnwardProblem problem, string? id) => problem switch
    {
        OnwardProblem.NoTimes => new Problem(file, "The plan states no start or end of the shift.", "State `shift` with `date`, `start` and `end`.", null),
        OnwardProblem.SharedMix => new Problem(file, "Two paving trains lay one mix, and the record does not tell whose a load is, so that the shift is not planned anew.", "Give each train its own plan, or lay one mix with each.", null),
        OnwardProblem.Unknown => new Problem(file, $"The plan has no plant, group of trucks, roller or single place `{id}`.", "Use an id of the plan; where several runs hold a station, name the run.", null),
        OnwardProblem.OtherDay => new Problem("--at", "The moment lies more than a day before or after the shift.", "Look at the date and the zone of the record.", null),
        _ => new Problem(file, "The plan does not state enough for its shift to be simulated.", "`laygate check` says what is missing.", null),
    };

    /// <summary>Measured against computed temperatures of the mat.</summary>
    public MeasuredReport Measured()
    {
        var learnt = plan.Plan.Learnt.Where(entry => plan.Plan.Courses.Any(course => course.Mix is { } mix && entry.Mixes.Contains(mix, StringComparer.Ordinal))).ToList();
        return new MeasuredReport(plan.Plan.Identity.Id, plan.Plan.Identity.Title, Hash, Record, MatComparisons.Of(Context, Record, learnt), record.Refused)
        {
            Revision = plan.Plan.Identity.Revision,
            Learnt = [.. learnt.Select(LearntShown.Of)],
        };
    }

    /// <summary>The lots of the shift by an acceptance scheme.</summary>
    /// <param name="scheme">The scheme.</param>
    /// <param name="seed">Seed of the draw of places.</param>
    /// <param name="version">Version of the program.</param>
    public AcceptanceReport Lots(AcceptanceScheme scheme, ulong seed, string version) => new LotReports(this, scheme, seed).Make(version);

    /// <summary>What became of the limits of the plan and of its specifications.</summary>
    /// <param name="book">The merged rule book.</param>
    /// <param name="departures">Departures, checked against the book.</param>
    /// <param name="today">Day of checking, for a plan without the date of its shift.</param>
    /// <param name="simpleBy">The clause by which readings are taken as they are; null: their uncertainty decides.</param>
    /// <param name="version">Version of the program.</param>
    public HeldReport Held(RuleBook book, IReadOnlyList<Departure> departures, DateOnly today, string? simpleBy, string version)
    {
        var settings = new HeldSettings(new EvaluationSettings { File = file, CheckedOn = today, PlanHash = Hash, ProgramVersion = version }, departures, simpleBy);
        return HeldJudge.Judge(book, new HappenedShift(By(book), Record), settings) with { Refused = record.Refused, Remarks = record.Notes };
    }

    /// <summary>What the record of a trial length proves for a course of the plan.</summary>
    /// <param name="course">Id of the course; null for the only one.</param>
    /// <param name="growth">Gain per pass below which more passes are not worth it, as a measure of density.</param>
    /// <returns>It, or why there is none.</returns>
    public (TrialReport? Report, Problem? Problem) Trial(string? course, string growth)
    {
        if (MeasureReader.Read(growth, Dimension.Density, out var wrong) is not var (number, unit) || unit.ToSi(number) <= 0)
        {
            return (null, new Problem("--growth", wrong?.Message ?? "The growth must be above zero.", wrong?.Hint ?? "Write for example: --growth '16 kg/m3'", null));
        }

        var known = plan.Plan.Courses.FirstOrDefault(one => course is null ? plan.Plan.Courses.Count == 1 : string.Equals(one.Id, course, StringComparison.Ordinal));
        if (known is null)
        {
            return (null, new Problem("--course", course is null ? "The plan has several courses." : $"The plan has no course `{course}`.", $"Name one of: {string.Join(", ", plan.Plan.Courses.Select(one => one.Id))}.", null));
        }

        var found = TrialGrowth.Of(new HappenedShift(Context, Record), known, unit.ToSi(number), Repeatability);
        var phases = found.Passes.Take(found.Curve?.Pattern ?? 0).Where(pass => pass.Phase is not null).GroupBy(pass => pass.Phase!, StringComparer.Ordinal).Select(group => (group.Key, group.Count())).ToList();
        var stated = plan.Plan.Tests.FirstOrDefault(test => test.Kind == TestKind.TrialLength && test.Reached is not null && (test.Course is null ? plan.Plan.Courses.Count == 1 : string.Equals(test.Course, known.Id, StringComparison.Ordinal)))?.Reached;
        return (new TrialReport(Identity.Id, Identity.Title, Record, found, unit.ToSi(number), unit, Context.System, phases, stated, record.Refused) { Revision = Identity.Revision, PlanHash = Hash }, null);
    }

    // The plan with what the specifications of a book assume.
    private QuantityContext By(RuleBook book) => new(plan.Plan, tools.Catalogue, new AssumptionSet([.. LaygateAssumptions.All, .. book.Assumptions]), seed: 1) { IsQuick = true };

    // A gauge in backscatter repeats to about 8 kg/m³ (0.5 lb/ft³) in a reading of one minute: handbook of a gauge, recalled. A smaller fall is no breakdown.
    private const double Repeatability = 8;

    /// <summary>SHA-256 of the bytes of the plan.</summary>
    internal string Hash => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>Identity of the plan.</summary>
    internal Identity Identity => plan.Plan.Identity;

    /// <summary>What was refused while the record was read.</summary>
    internal IReadOnlyList<Problem> Refused => record.Refused;

    /// <summary>What was seen while it was read.</summary>
    internal IReadOnlyList<Problem> Remarks => record.Notes;

    private DateTimeOffset? MomentOf(string text)
    {
        var sheet = new SheetQuantities(Context);
        if (DateTime.TryParseExact(text, ["yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
        {
            return sheet.At(new Moment(local, null));
        }

        if (DateTimeOffset.TryParseExact(text, ["yyyy-MM-ddTHH:mmzzz", "yyyy-MM-ddTHH:mm:sszzz"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment))
        {
            return moment;
        }

        if (sheet.Start is not { } start || !TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return null;
        }

        // A time of the shift is the one that follows its start, set-up and first loads counted.
        var begun = start - BeforeStart;
        var day = DateOnly.FromDateTime(begun.DateTime);
        var first = sheet.At(new Moment(day.ToDateTime(time), null));
        return first < begun ? sheet.At(new Moment(day.AddDays(1).ToDateTime(time), null)) : first;
    }
}
