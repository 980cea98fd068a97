using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>What is replaced, and when.</summary>
/// <param name="Years">Years without any event after the last decision; 0: nothing is ever replaced.</param>
/// <param name="Texts">Whether comments give way, too, not only names.</param>
public sealed record RetentionRule(int Years, bool Texts);

/// <summary>A series whose names are due to be replaced.</summary>
/// <param name="Latest">Id of its latest revision.</param>
/// <param name="Title">What its plan calls itself.</param>
/// <param name="Since">When something last happened to it, UTC.</param>
/// <param name="Names">Number of entries and comments that name somebody.</param>
/// <param name="Texts">Number of comments that would give way.</param>
/// <param name="Plans">Number of revisions whose plan, records and reports are to be searched for names.</param>
public sealed record DueSeries(string Latest, string? Title, DateTimeOffset Since, int Names, int Texts, int Plans);

/// <summary>What is due, or was done.</summary>
/// <param name="Series">Series, the oldest first.</param>
/// <param name="Keys">Number of keys that ended long ago and still have a name.</param>
public sealed record RetentionDue(IReadOnlyList<DueSeries> Series, int Keys);

/// <summary>A plan, file, record, report or document in which names stand.</summary>
/// <param name="Revision">The revision that it belongs to.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Of">Number of the screening or of the record; 0 for what was handed in with the plan.</param>
/// <param name="Name">Its name.</param>
public sealed record NamedContent(int Revision, ContentKind Kind, int Of, string Name);

/// <summary>What replacing the names of one series changes.</summary>
/// <param name="Entries">Number of entries and comments that name somebody.</param>
/// <param name="Texts">Number of comments that would give way if comments are replaced, too.</param>
/// <param name="Names">Names that stand in its plans and records.</param>
/// <param name="Contents">Where they, or a hash of such a text, stand.</param>
public sealed record SeriesNames(int Entries, int Texts, IReadOnlyList<string> Names, IReadOnlyList<NamedContent> Contents);

/// <summary>
/// Replaces names of people, and where a setting says so what they wrote, in all that is kept of series that were decided long ago, and names of keys that ended long ago.
/// Each series is one transaction with an entry that says so: it may end half way, run on two replicas and run again.
/// </summary>
public sealed class Retention(RegisterDatabase database, INameReplacer replacer)
{
    /// <summary>Most series that are listed or replaced at once.</summary>
    public const int Most = 200;

    private static readonly SubmissionState[] Closed = [SubmissionState.Accepted, SubmissionState.AcceptedWithDepartures, SubmissionState.Returned];
    private static readonly string[] NoPeople = [Caller.Program.Id, Caller.Machine.Id];

    /// <summary>What is due now; nothing is changed.</summary>
    /// <param name="rule">What is replaced, and when.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<RetentionDue> DueAsync(RetentionRule rule, CancellationToken cancel)
    {
        if (rule.Years == 0)
        {
            return new RetentionDue([], 0);
        }

        await using var context = database.Open();
        var due = await DueRows(context, rule, Before(rule)).Take(Most).ToListAsync(cancel);
        var series = new List<DueSeries>();
        foreach (var row in due)
        {
            var (history, comments) = (History(context, row.Series), Notes(context, row.Series));
            series.Add(new DueSeries(
                row.Id,
                row.PlanTitle ?? row.PlanId,
                row.ChangedAt,
                await Named(history).CountAsync(cancel) + await Named(comments).CountAsync(cancel),
                rule.Texts ? await Said(history).CountAsync(cancel) + await Said(comments).CountAsync(cancel) : 0,
                await context.Submissions.CountAsync(one => one.Series == row.Series && one.SoughtAt == null, cancel)));
        }

        return new RetentionDue(series, await EndedKeys(context, Before(rule)).CountAsync(cancel));
    }

    /// <summary>Replaces what is due.</summary>
    /// <param name="rule">What is replaced, and when.</param>
    /// <param name="cancel">Ends it between two series.</param>
    /// <returns>Number of series and keys that were changed.</returns>
    public async Task<(int Series, int Keys)> ReplaceAsync(RetentionRule rule, CancellationToken cancel)
    {
        var (series, keys) = (0, 0);
        if (rule.Years == 0)
        {
            return (series, keys);
        }

        for (var found = Most; found == Most;)
        {
            List<string> due;
            await using (var context = database.Open())
            {
                due = await DueRows(context, rule, Before(rule)).Select(row => row.Series).Take(Most).ToListAsync(cancel);
            }

            found = due.Count;
            foreach (var one in due)
            {
                series += await database.InTransactionAsync(context => ReplaceAsync(context, one, rule, cancel), Moment.ReplacedBeforeCommit, null, cancel) ? 1 : 0;
            }
        }

        keys = await database.InTransactionAsync(context => ReplaceKeysAsync(context, Before(rule), cancel), Moment.ReplacedBeforeCommit, null, cancel);
        await database.WipeAsync(cancel);
        return (series, keys);
    }

    /// <summary>What replacing the names of a series would change; nothing is changed.</summary>
    /// <param name="id">Id of one of its revisions.</param>
    /// <param name="cancel">Ends it.</param>
    /// <returns>Null when there is no such submission.</returns>
    public async Task<SeriesNames?> FindAsync(string id, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        if (await context.Submissions.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancel) is not { } named)
        {
            return null;
        }

        var (history, comments) = (NotAsked(History(context, named.Series)), Notes(context, named.Series));
        var contents = await ContentsAsync(context, await RowsAsync(context, named.Series, cancel), cancel);
        return new SeriesNames(
            await Named(history).CountAsync(cancel) + await Named(comments).CountAsync(cancel),
            await Said(history).CountAsync(cancel) + await Said(comments).CountAsync(cancel),
            [.. contents.SelectMany(one => one.Names).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            [.. contents.SelectMany(one => one.Changed.Select(content => new NamedContent(one.One.Revision, content.Kind, content.Of, content.Name)))]);
    }

    /// <summary>Replaces the names of one series now, whatever its age.</summary>
    /// <param name="id">Id of one of its revisions; the latest must be decided.</param>
    /// <param name="reason">Why; it stands in the history.</param>
    /// <param name="texts">Whether comments give way, too.</param>
    /// <param name="caller">An administrator.</param>
    /// <param name="cancel">Ends it; nothing is changed then.</param>
    /// <returns>Whether anything was replaced.</returns>
    /// <exception cref="RefusedException">The caller is no administrator, there is no such submission, it is not decided, or no reason is given.</exception>
    public async Task<bool> ReplaceNowAsync(string id, string? reason, bool texts, Caller caller, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(caller);
        CallerText.Id(id);
        if (caller.Role != Role.Administrator)
        {
            throw new RefusedException(Refusal.NotAllowed, "Only an administrator may do this.");
        }

        var why = CallerText.Prose(reason, "The reason") ?? throw new RefusedException(Refusal.BadRequest, "Say why names are replaced.");
        var done = await database.InTransactionAsync(context => ReplaceNowAsync(context, id, why, texts, caller, cancel), Moment.ReplacedBeforeCommit, null, cancel);
        await database.WipeAsync(cancel);
        return done;
    }

    private DateTimeOffset Before(RetentionRule rule) => database.Now.AddYears(-rule.Years);

    // Decided, nothing has happened to it since that day, and somewhere in the series a person is still named, or speaks, or nobody has looked yet.
    private static IOrderedQueryable<SubmissionRow> DueRows(RegisterContext context, RetentionRule rule, DateTimeOffset before)
    {
        var texts = rule.Texts;
        return context.Submissions.AsNoTracking()
            .Where(row => row.IsLatest && Closed.Contains(row.State) && row.ChangedAt < before && context.Submissions.Any(one => one.Series == row.Series
                && (one.SoughtAt == null || context.History.Any(entry => entry.Number == one.Number && !NoPeople.Contains(entry.By) && (entry.NameSalt != null || (texts && entry.CommentSalt != null)))
                    || context.Comments.Any(said => said.Number == one.Number && (said.NameSalt != null || (texts && said.TextSalt != null))))))
            .OrderBy(row => row.ChangedAt).ThenBy(row => row.Number);
    }

    private static IQueryable<HistoryRow> History(RegisterContext context, string series) =>
        context.Submissions.Where(one => one.Series == series).Join(context.History, one => one.Number, entry => entry.Number, (_, entry) => entry).Where(entry => !NoPeople.Contains(entry.By));

    // Who had names replaced is named until the time is over, or each asking would be a reason for the next.
    private static IQueryable<HistoryRow> NotAsked(IQueryable<HistoryRow> rows) => rows.Where(row => row.Event != RegisterEvent.ReplacementAsked);

    private static IQueryable<CommentRow> Notes(RegisterContext context, string series) => context.Comments.Where(said => said.Series == series);

    private static IQueryable<HistoryRow> Named(IQueryable<HistoryRow> rows) => rows.Where(row => row.NameSalt != null);

    private static IQueryable<CommentRow> Named(IQueryable<CommentRow> rows) => rows.Where(row => row.NameSalt != null);

    private static IQueryable<HistoryRow> Said(IQueryable<HistoryRow> rows) => rows.Where(row => row.CommentSalt != null);

    private static IQueryable<CommentRow> Said(IQueryable<CommentRow> rows) => rows.Where(row => row.TextSalt != null);

    private static IQueryable<KeyRow> EndedKeys(RegisterContext context, DateTimeOffset before) =>
        context.Keys.Where(key => key.NameSalt != null && ((key.RevokedAt != null && key.RevokedAt < before) || (key.ExpiresAt != null && key.ExpiresAt < before)));

    private static Task<List<SubmissionRow>> RowsAsync(RegisterContext context, string series, CancellationToken cancel) =>
        context.Submissions.Where(row => row.Series == series).OrderBy(row => row.Revision).ToListAsync(cancel);

    private async Task<List<ContentReplacement>> ContentsAsync(RegisterContext context, List<SubmissionRow> rows, CancellationToken cancel)
    {
        var contents = new List<ContentReplacement>();
        foreach (var row in rows)
        {
            contents.Add(await ContentReplacement.OfAsync(context, row, replacer, database, cancel));
        }

        return contents;
    }

    private async Task<bool> ReplaceAsync(RegisterContext context, string series, RetentionRule rule, CancellationToken cancel)
    {
        // The first of the series is held, as by whoever adds a revision; then it is looked at again.
        _ = await context.HeldAsync(series, cancel);
        var rows = await RowsAsync(context, series, cancel);
        var latest = rows.Find(row => row.IsLatest)!;
        return Closed.Contains(latest.State) && latest.ChangedAt < Before(rule)
            && await ReplaceAsync(context, rows, rule.Texts, History(context, series), FormattableString.Invariant($"setting Retention: {rule.Years} years without an event after the decision"), cancel);
    }

    private async Task<bool> ReplaceNowAsync(RegisterContext context, string id, string reason, bool texts, Caller caller, CancellationToken cancel)
    {
        var named = await context.Submissions.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancel) ?? throw new RefusedException(Refusal.NotFound, "There is no submission of that id.");
        _ = await context.HeldAsync(named.Series, cancel);
        var rows = await RowsAsync(context, named.Series, cancel);
        var latest = rows.Find(row => row.IsLatest)!;
        if (!Closed.Contains(latest.State))
        {
            throw new RefusedException(Refusal.WrongState, "The latest revision is not decided yet. Decide on it first: until then people must know whom the plan names.");
        }

        var replaced = await ReplaceAsync(context, rows, texts, NotAsked(History(context, named.Series)), "asked for by an administrator; the next entry says why", cancel);
        if (replaced)
        {
            Mapping.Note(context, latest, RegisterEvent.ReplacementAsked, caller, database.Now, reason);
        }

        return replaced;
    }

    private async Task<bool> ReplaceAsync(RegisterContext context, List<SubmissionRow> rows, bool withTexts, IQueryable<HistoryRow> entries, string why, CancellationToken cancel)
    {
        var (latest, series) = (rows.Find(row => row.IsLatest)!, rows[0].Series);
        var history = await entries.Where(row => row.NameSalt != null || row.CommentSalt != null).ToListAsync(cancel);
        var comments = await Notes(context, series).Where(row => row.NameSalt != null || row.TextSalt != null).ToListAsync(cancel);
        var contents = await ContentsAsync(context, rows, cancel);
        rows.ForEach(row => row.SoughtAt = database.Now);
        var (names, texts, changed) = (Names(history, comments), withTexts ? Texts(history, comments) : 0, contents.Sum(one => one.Count));
        if (names + texts + changed == 0)
        {
            return false;
        }

        foreach (var row in rows)
        {
            (row.SubmitterName, row.AssigneeName) = (SaltedText.Name, row.Assignee is null ? null : SaltedText.Name);
        }

        var numbers = rows.ConvertAll(row => row.Number);
        await context.RecordFiles.Where(file => numbers.Contains(file.Number) && file.ByName != SaltedText.Name).ExecuteUpdateAsync(set => set.SetProperty(file => file.ByName, SaltedText.Name), cancel);
        var said = Mapping.Note(
            context,
            latest,
            RegisterEvent.NamesReplaced,
            Caller.Program,
            database.Now,
            FormattableString.Invariant($"replaced {names + texts}: {names} names, {texts} texts; and the names in {changed} documents; {why}"));
        await WriteAsync(context, contents, said, cancel);
        rows.ForEach(row => row.SearchText = Mapping.SearchText(row));
        return true;
    }

    // First it is said, then contents change, then what repeats their hashes: the database lets none of it go before the other.
    private static async Task WriteAsync(RegisterContext context, List<ContentReplacement> contents, HistoryRow said, CancellationToken cancel)
    {
        var line = 0;
        contents.ForEach(one => line = one.Say(context, said, line));
        await context.SaveChangesAsync(cancel);
        contents.ForEach(one => one.Put());
        await context.SaveChangesAsync(cancel);
        foreach (var one in contents)
        {
            await one.ForgetAsync(context, cancel);
        }
    }

    private static int Names(List<HistoryRow> history, List<CommentRow> comments)
    {
        var (entries, said) = (history.FindAll(row => row.NameSalt is not null), comments.FindAll(row => row.NameSalt is not null));
        entries.ForEach(row => (row.ByName, row.NameSalt) = (SaltedText.Name, null));
        said.ForEach(row => (row.ByName, row.NameSalt) = (SaltedText.Name, null));
        return entries.Count + said.Count;
    }

    private static int Texts(List<HistoryRow> history, List<CommentRow> comments)
    {
        var (entries, said) = (history.FindAll(row => row.CommentSalt is not null), comments.FindAll(row => row.TextSalt is not null));
        entries.ForEach(row => (row.Comment, row.CommentSalt) = (SaltedText.Text, null));
        said.ForEach(row => (row.Text, row.TextSalt) = (SaltedText.Text, null));
        return entries.Count + said.Count;
    }

    private async Task<int> ReplaceKeysAsync(RegisterContext context, DateTimeOffset before, CancellationToken cancel)
    {
        await context.HoldKeysAsync(cancel);
        var keys = await EndedKeys(context, before).ToListAsync(cancel);
        var ids = keys.ConvertAll(key => key.Id);
        var acts = await context.KeyHistory.Where(act => ids.Contains(act.KeyId) && act.NameSalt != null && !NoPeople.Contains(act.By)).ToListAsync(cancel);
        acts.ForEach(act => (act.ByName, act.NameSalt) = (SaltedText.Name, null));
        foreach (var key in keys)
        {
            (key.Name, key.NameSalt) = (SaltedText.Name, null);
            context.KeyHistory.Add(new KeyHistoryRow { KeyId = key.Id, At = database.Now, Event = KeyEvent.NameReplaced, By = Caller.Program.Id, ByName = Caller.Program.Name });
        }

        return keys.Count;
    }
}
