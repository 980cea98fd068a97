using System.Globalization;
using System.Security.Cryptography;
using Laygate.Checking.Jobs;
using Laygate.Checking.Plots;
using Laygate.Checking.Sheets;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Departures;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Outlook;
using Laygate.Rules.Remedies;
using Laygate.Rules.Results;

namespace Laygate.Checking;

/// <summary>What a check needs to be told from outside.</summary>
/// <param name="AtLeastStage">Stage at which at least a plan is judged; null: its own.</param>
/// <param name="CheckDate">Date of checking.</param>
/// <param name="ProgramVersion">Version of the program, for the report.</param>
/// <param name="Seed">Seed of everything that is sampled.</param>
public sealed record CheckSettings(Stage? AtLeastStage, DateOnly CheckDate, string ProgramVersion, ulong Seed = 1)
{
    /// <summary>Whether to look for what would mend findings.</summary>
    public bool Remedies { get; init; }

    /// <summary>Whether to judge laying hour by hour, or by the envelope of the weather.</summary>
    public bool Outlook { get; init; }

    /// <summary>Whether to work out what plots are drawn from and to list every input, for a page.</summary>
    public bool Page { get; init; }

    /// <summary>Whether spread, simulated shifts, remedies and outlook are left out; the report says so.</summary>
    public bool Quick { get; init; }

    /// <summary>What the host can reach of the files that plans use.</summary>
    public IPartFiles Parts { get; init; } = new NoPartFiles();

    /// <summary>The file of settings that was laid over the command, for the report; null when there is none.</summary>
    public string? SettingsFile { get; init; }
}

/// <summary>Checks plans against one rule book: bytes in, reports or positioned problems out. Each step hands on or stops; a plan that stops never gets a half-true report.</summary>
public sealed class PlanCheck
{
    private readonly RuleBook book;
    private readonly CheckSettings settings;
    private readonly IReadOnlyList<Departure> departures;
    private readonly PlanTools tools;
    private readonly AssumptionSet assumptions;

    /// <summary>Prepares a check.</summary>
    /// <param name="book">The merged rule book.</param>
    /// <param name="settings">Stage, date and version.</param>
    /// <param name="departures">Departures, read against the same book; none when left out.</param>
    /// <param name="tools">What several checks share; made for this one when left out.</param>
    public PlanCheck(RuleBook book, CheckSettings settings, IReadOnlyList<Departure>? departures = null, PlanTools? tools = null)
    {
        this.tools = tools ?? new PlanTools();
        this.book = book;
        this.settings = settings;
        this.departures = departures ?? [];
        assumptions = new AssumptionSet([.. LaygateAssumptions.All, .. book.Assumptions]);
    }

    /// <summary>The merged rule book.</summary>
    internal RuleBook Book => book;

    /// <summary>Checks every plan of one file.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <returns>One report per plan, or all problems of the step that stopped the first of them.</returns>
    public FileResult Run(string file, byte[] bytes) => Run(file, bytes, CancellationToken.None);

    /// <summary>Checks every plan of one file, unless it is called off: that is looked at before each quantity is computed.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <returns>One report per plan, or all problems of the step that stopped the first of them.</returns>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public FileResult Run(string file, byte[] bytes, CancellationToken cancel) => Result(file, bytes, tools.Reader.Read(file, bytes, settings.Parts), cancel);

    /// <summary>Checks every plan of one file that was read before, with the reader of the same tools.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="read">What was read from them.</param>
    /// <returns>One report per plan, or all problems of the step that stopped the first of them.</returns>
    public FileResult Run(string file, byte[] bytes, PlanFile read) => Result(file, bytes, read, CancellationToken.None);

    private FileResult Result(string file, byte[] bytes, PlanFile read, CancellationToken cancel)
    {
        if (read.Job is { } job)
        {
            return new JobCheck(this, book, settings, departures, tools, assumptions).Run(file, HashOf(bytes), read, job, cancel);
        }

        var judged = Judged(file, bytes, read, cancel);
        return new FileResult(file, [.. judged.Plans.Select(plan => plan.Report)], judged.Problems);
    }

    /// <summary>Prepares the site sheet of every plan of one file.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="draft">Whether to make it as a draft, also of a plan that fails.</param>
    /// <returns>One sheet per plan; none when a plan fails and no draft is wanted, or when the file cannot be read.</returns>
    public SheetResult Sheet(string file, byte[] bytes, bool draft) => Sheet(file, bytes, draft, CancellationToken.None);

    /// <summary>Prepares the site sheet of every plan of one file, unless it is called off.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="draft">Whether to make it as a draft, also of a plan that fails.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <returns>One sheet per plan; none when a plan fails and no draft is wanted, or when the file cannot be read.</returns>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public SheetResult Sheet(string file, byte[] bytes, bool draft, CancellationToken cancel) => Sheet(file, bytes, draft, shift: null, cancel);

    /// <summary>Prepares the site sheet of one shift of a job, unless it is called off.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="draft">Whether to make it as a draft, also of a plan that fails.</param>
    /// <param name="shift">Id of the only shift of a job that is wanted; null for all, and for plans.</param>
    /// <param name="cancel">Calls it off.</param>
    /// <returns>One sheet per plan; none when a plan fails and no draft is wanted, or when the file cannot be read.</returns>
    public SheetResult Sheet(string file, byte[] bytes, bool draft, string? shift, CancellationToken cancel)
    {
        var (judged, problems) = Judged(file, bytes, ShiftChoice.Of(file, tools.Reader.Read(file, bytes, settings.Parts), shift), cancel);
        var sheets = judged.Select(plan => SheetOf.Make(plan.Context, plan.Report, book, settings.CheckDate, draft)).ToList();
        return new SheetResult(
            file,
            sheets.Contains(null) ? [] : [.. sheets.OfType<SiteSheet>()],
            [.. judged.Where((_, index) => sheets[index] is null).Select(plan => plan.Report)],
            problems)
        {
            Reports = [.. judged.Select(plan => plan.Report)],
        };
    }

    /// <summary>Checks every plan of one file and keeps what the reports were made from.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="shift">Id of the only shift of a job that is wanted; null for all with what lies between them, and for plans.</param>
    /// <param name="cancel">Calls it off.</param>
    internal JudgedFile Judged(string file, byte[] bytes, string? shift, CancellationToken cancel)
    {
        var read = ShiftChoice.Of(file, tools.Reader.Read(file, bytes, settings.Parts), shift);
        return shift is null && read.Job is { } job
            ? new JobCheck(this, book, settings, departures, tools, assumptions).Judged(file, HashOf(bytes), read, job, cancel)
            : Judged(file, bytes, read, cancel);
    }

    private JudgedFile Judged(string file, byte[] bytes, PlanFile read, CancellationToken cancel)
    {
        // Beside the check: for the first hash of a process the system loads a library, which takes a tenth of a quick check.
        var hash = Task.Run(() => HashOf(bytes), CancellationToken.None);
        return new JudgedFile([.. read.Plans.Select((plan, index) => Named(Judged(plan, (file, index + 1, string.Empty), cancel)))], read.Problems);

        JudgedPlan Named(JudgedPlan judged) => judged with { Report = judged.Report with { PlanHash = hash.GetAwaiter().GetResult() } };
    }

    /// <summary>Checks one plan that was read.</summary>
    internal JudgedPlan Judged(ReadPlan plan, (string File, int Document, string Hash) from, CancellationToken cancel) => WithHints(Judge(plan, from, cancel), from.File, plan.OldWords);

    private static string HashOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static JudgedPlan WithHints(JudgedPlan plan, string file, IReadOnlyList<FoundOldWord> old) => old.Count == 0 ? plan : plan with
    {
        Report = plan.Report with
        {
            Notes = [.. plan.Report.Notes, .. old.Select(word => OldWordNotes.Of(new OldWord(FormattableString.Invariant($"{word.Span.File ?? file}:{word.Span.Line}"), word.Old, word.New)))],
        },
    };

    private JudgedPlan Judge(ReadPlan plan, (string File, int Document, string Hash) from, CancellationToken cancel)
    {
        var context = new QuantityContext(plan.Plan, tools.Catalogue, assumptions, settings.Seed) { IsQuick = settings.Quick, Cancel = cancel };
        var (remedies, outlook) = (settings.Remedies && !settings.Quick, settings.Outlook && !settings.Quick);
        if (remedies || outlook)
        {
            context.Remembering();
        }

        var evaluation = new EvaluationSettings
        {
            File = from.File,
            Document = from.Document,
            CheckedOn = settings.CheckDate,
            Stage = settings.AtLeastStage,
            PlanHash = from.Hash,
            Samples = new ContextSamples(context),
            ProgramVersion = settings.ProgramVersion,
        };
        var report = Evaluator.Evaluate(book, context, evaluation);
        // What a departure covers needs no remedy; that a remedy does no harm is judged without departures.
        var covered = Departed(report, context).Findings.Where(finding => finding.Status == Status.Departed).Select(KeyOf).ToHashSet();
        var asItIs = report;
        // Beside the remedies: neither needs all cores all the time.
        var hours = outlook ? Task.Run(() => OutlookSearch.AddTo(asItIs, book, context, evaluation).Outlook, cancel) : null;
        report = remedies ? RemedySearch.AddTo(report, book, context, evaluation, tools.Reader.IsConsistent, isWanted: finding => !covered.Contains(KeyOf(finding))) : report;
        report = Departed(report with { Outlook = hours?.GetAwaiter().GetResult() }, context);
        report = settings.Page ? report with { Plots = settings.Quick ? null : PlotBuilder.Of(context), Inputs = InputList.Of(plan.Root) } : report;
        return new JudgedPlan(
            plan.Root,
            plan.Positions,
            context,
            report with { Settings = settings.SettingsFile, Uses = plan.Uses, Findings = [.. report.Findings.Select(finding => Placed(plan.Positions, finding))] });
    }

    private Report Departed(Report report, QuantityContext context) =>
        DepartureJudge.Apply(report, book, departures, context.Elements.All.Select(element => element.Address).Concat(context.Elements.Values.Select(value => value.Address)), settings.CheckDate);

    private static (string Rule, string Address) KeyOf(Finding finding) => (finding.Rule, finding.Address);

    internal static Finding Placed(PlanPositions positions, Finding finding) => finding with
    {
        Position = Place(positions, finding),
        Notes = [.. finding.Notes.Select(note => Placed(positions, note))],
    };

    // A remark that names another place of the plan says its line, so that both can be looked at.
    private static Note Placed(PlanPositions positions, Note note)
    {
        if (note.Arguments.FirstOrDefault(argument => string.Equals(argument.Name, NoteArgument.At, StringComparison.Ordinal))?.Text is not { } at)
        {
            return note;
        }

        var slash = at.IndexOf('/', StringComparison.Ordinal);
        var span = positions.Of(slash < 0 ? at : at[..slash], slash < 0 ? string.Empty : at[(slash + 1)..]);
        var placed = string.Create(CultureInfo.InvariantCulture, $"{at} ({(span.File is { } file ? $"{file} " : string.Empty)}line {span.Line})");
        return note with { Arguments = [.. note.Arguments.Select(argument => string.Equals(argument.Name, NoteArgument.At, StringComparison.Ordinal) ? argument with { Text = placed } : argument)] };
    }

    // A missing input is where the reader has to write; otherwise the value itself; otherwise the element.
    private static Position Place(PlanPositions positions, Finding finding)
    {
        var at = finding.Missing.Count > 0 ? finding.Missing[0] : finding.Input ?? new InputReference(finding.Address, string.Empty);
        return Spans.Of(positions.Of(at.Address, at.Key));
    }
}

/// <summary>A plan with its report and what the report was made from.</summary>
/// <param name="Root">The plan as it was read.</param>
/// <param name="Positions">Where its values stand.</param>
/// <param name="Context">Its quantities.</param>
/// <param name="Report">The report.</param>
internal sealed record JudgedPlan(MapToken Root, PlanPositions Positions, QuantityContext Context, Report Report);

/// <summary>The plans of one file, or why it could not be read.</summary>
/// <param name="Plans">The plans.</param>
/// <param name="Problems">Problems; when there are any, there are no plans.</param>
internal sealed record JudgedFile(IReadOnlyList<JudgedPlan> Plans, IReadOnlyList<Problem> Problems)
{
    /// <summary>Of a job the id of the shift that each plan is, null for what lies between the shifts; null where the file is no job.</summary>
    public IReadOnlyList<string?>? Shifts { get; init; }
}
