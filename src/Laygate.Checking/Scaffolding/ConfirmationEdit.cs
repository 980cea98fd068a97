using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Scaffolding;

/// <summary>What the checking side has looked up.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Strength">The bound; null where only one can be meant.</param>
/// <param name="Row">Row of the table: its place from 1 or its key; null: all rows, or no table.</param>
/// <param name="Confirmation">Who, when, edition, page.</param>
public sealed record ConfirmRequest(string Rule, Strength? Strength, string? Row, Confirmation Confirmation);

/// <summary>A file with one more confirmation, or why there is none.</summary>
/// <param name="Text">The whole file.</param>
/// <param name="Summary">What was confirmed, in words.</param>
/// <param name="Problems">Why nothing was changed.</param>
public sealed record EditedFile(string? Text, string Summary, IReadOnlyList<Problem> Problems);

/// <summary>Writes a confirmation into an overlay of the checking side. The text around it stays as it is, and what comes out is read again before it is handed over.</summary>
public static class ConfirmationEdit
{
    private const string Key = "confirm";

    /// <summary>Adds a confirmation.</summary>
    /// <param name="pack">The shipped pack.</param>
    /// <param name="rules">Specifications whose limits are confirmed.</param>
    /// <param name="file">The overlay.</param>
    /// <param name="files">The host's files.</param>
    /// <param name="request">What was looked up.</param>
    public static EditedFile Add(RulePack pack, IReadOnlyList<string> rules, string file, IRuleFiles files, ConfirmRequest request)
    {
        var existing = files.File(file);
        var others = rules.Where(name => !string.Equals(name, file, StringComparison.Ordinal)).ToList();
        var before = RuleBooks.Load(pack, existing is null ? others : [.. others, file], files);
        if (before.Book is null)
        {
            return new EditedFile(null, string.Empty, before.Problems);
        }

        try
        {
            var bound = BoundOf(before.Book, request);
            var row = RowOf(bound, request.Row);
            var text = Insert(existing is null ? Start(file, request.Confirmation) : Decode(existing), file, Entry(request, bound, row));
            var after = RuleBooks.Load(pack, [.. others, file], new WithFile(files, file, Encoding.UTF8.GetBytes(text)));
            return after.Book is null ? new EditedFile(null, string.Empty, after.Problems) : new EditedFile(text, Summary(request, bound, row), []);
        }
        catch (EditProblem problem)
        {
            return new EditedFile(null, string.Empty, [new Problem(file, problem.Message, problem.Hint, null)]);
        }
    }

    private static Bound BoundOf(RuleBook book, ConfirmRequest request)
    {
        var rule = book.All.FirstOrDefault(merged => string.Equals(merged.Rule.Definition.Id, request.Rule, StringComparison.Ordinal));
        if (rule is null)
        {
            var near = NearestNames.Of(request.Rule, book.All.Select(merged => merged.Rule.Definition.Id));
            throw new EditProblem($"There is no rule `{request.Rule}`.", near.Count > 0 ? $"Did you mean `{near[0]}`?" : "`laygate rules` lists them.");
        }

        List<Bound> bounds = [.. rule.Rule.Bounds.Select(bound => bound.Definition).Where(bound => request.Strength is null || bound.Strength == request.Strength)];
        var looked = bounds.Where(bound => CanBeLookedUp(bound, request.Row)).ToList();
        if (bounds.Count == 0)
        {
            throw new EditProblem($"`{request.Rule}` has no {(request.Strength is { } strength ? Words.Of(strength) + " " : string.Empty)}limit here.", "Name the specification that sets it with --rules.");
        }

        if (looked.Count == 0)
        {
            throw new EditProblem(Why(bounds[0].Source), "Set the contract's own limit under `set:` of a particular specification instead.");
        }

        return looked.Count == 1 ? looked[0]
            : throw new EditProblem($"`{request.Rule}` has a required and an advised limit.", "Say which one with --strength required or --strength advised.");
    }

    // A judgement of ours, a derivation or a habit of the trade stands on no page that could be looked up.
    private static bool CanBeLookedUp(Bound bound, string? row)
    {
        var source = bound.Limit is TableLimit table && LimitTexts.RowOf(table, row ?? string.Empty) is { } at ? table.Rows[at - 1].Source ?? bound.Source : bound.Source;
        return Confirmations.CanBeLookedUp(source.Evidence);
    }

    private static string Why(SourceReference source) => source.Evidence == Evidence.Confirmed
        ? $"The limit is confirmed already, by {source.Confirmation?.By}."
        : $"The limit is {Words.Of(source.Evidence).Replace('-', ' ')}: no publication holds it, so it cannot be confirmed.";

    private static int? RowOf(Bound bound, string? row)
    {
        if (row is null)
        {
            return null;
        }

        var rows = (bound.Limit as TableLimit)?.Rows ?? [];
        var number = int.TryParse(row, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var place) ? place : LimitTexts.RowOf(bound.Limit, row) ?? 0;
        if (number >= 1 && number <= rows.Count)
        {
            return number;
        }

        throw rows.Count == 0
            ? new EditProblem("This limit is no table and has no rows.", "Leave --row out.")
            : new EditProblem($"The table has no row `{row}`.", $"Its rows are: {string.Join("; ", rows.Select(one => $"`{LimitTexts.RowKey(one)}`"))}.");
    }

    private static NewEntry Entry(ConfirmRequest request, Bound bound, int? row)
    {
        var values = new List<(string, string)> { ("rule", request.Rule), ("strength", Words.Of(bound.Strength)) };
        if (row is { } number)
        {
            values.Add(("row", LimitTexts.RowKey(((TableLimit)bound.Limit).Rows[number - 1])));
        }

        if (LimitTexts.Of(bound, row) is { } limit)
        {
            values.Add(("limit", limit));
        }

        var confirmation = request.Confirmation;
        return new NewEntry([.. values, ("edition", confirmation.Edition), ("page", confirmation.Page), ("by", confirmation.By), ("on", Day(confirmation.On))]);
    }

    private static string Insert(string text, string file, NewEntry entry)
    {
        var read = YamlReader.Read(Encoding.UTF8.GetBytes(text), "specification");
        return (read.Documents is [{ Root: MapToken root }] ? ListInsertion.Add(text, root, Key, entry, asLines: false) : null)
            ?? throw new EditProblem($"`{file}` is written in a form into which no entry can be inserted safely.", $"Add it to `confirm:` by hand: {entry.Flow}");
    }

    private static string Start(string file, Confirmation confirmation) => $"""
        # Limits that the checking side has looked up in the publications. `laygate confirm` adds to it.
        # It belongs to whoever checks, never to whoever is checked.
        name: {NewEntry.Scalar(Slugs.Of(file))}
        title: Limits confirmed by the checking side
        issuer: {NewEntry.Scalar(confirmation.By)}
        edition: {NewEntry.Scalar($"begun {Day(confirmation.On)}")}
        layer: particular
        jurisdiction: none
        confirm: []

        """.ReplaceLineEndings("\n");

    private static string Summary(ConfirmRequest request, Bound bound, int? row)
    {
        var which = row is { } number ? $", row `{LimitTexts.RowKey(((TableLimit)bound.Limit).Rows[number - 1])}`" : bound.Limit is TableLimit ? ", all rows" : string.Empty;
        var limit = LimitTexts.Of(bound, row) is { } text ? $": {text}" : string.Empty;
        return $"{request.Rule}, {Words.Of(bound.Strength)}{which}{limit}";
    }

    private static string Decode(byte[] bytes) => Encoding.UTF8.GetString(bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsSpan(3) : bytes);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The host's files with one of them changed.</summary>
    private sealed class WithFile(IRuleFiles files, string path, byte[] bytes) : IRuleFiles
    {
        public IRuleFolder? Folder(string folder) => files.Folder(folder);

        byte[]? IRuleFiles.File(string file) => string.Equals(file, path, StringComparison.Ordinal) ? bytes : files.File(file);
    }
}

/// <summary>Why a file is not changed.</summary>
internal sealed class EditProblem(string message, string? hint) : Exception(message)
{
    /// <summary>What to do.</summary>
    public string? Hint { get; } = hint;
}

/// <summary>Short names from the names of files.</summary>
internal static class Slugs
{
    /// <summary>Lower-case letters and digits joined by single hyphens, from the last part of a path.</summary>
    public static string Of(string path)
    {
        var name = path[(path.LastIndexOfAny(['/', '\\']) + 1)..];
        var point = name.LastIndexOf('.');
        var letters = (point > 0 ? name[..point] : name).ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-');
        var slug = string.Join('-', string.Concat(letters).Split('-', StringSplitOptions.RemoveEmptyEntries));
        return slug.Length > 0 ? slug : "own";
    }
}
