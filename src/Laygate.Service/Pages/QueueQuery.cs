using System.Globalization;
using Laygate.Register;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;

namespace Laygate.Service.Pages;

/// <summary>Which submissions a list shows and in what order, as its address says it; a decision goes on in the same order.</summary>
internal sealed record QueueQuery
{
    /// <summary>Entries on one page.</summary>
    public const int Size = 50;

    /// <summary>The word for submissions that wait for a decision.</summary>
    public const string Open = "open";

    /// <summary>The word for submissions in any state.</summary>
    public const string Any = "any";

    /// <summary>What is searched for.</summary>
    public string Search { get; init; } = string.Empty;

    /// <summary>A state, <see cref="Open"/> or <see cref="Any"/>.</summary>
    public string State { get; init; } = Any;

    /// <summary><c>me</c>, <c>nobody</c>, or empty for anybody.</summary>
    public string Who { get; init; } = string.Empty;

    /// <summary>Whether earlier revisions are listed, too.</summary>
    public bool Earlier { get; init; }

    /// <summary>By what it is sorted.</summary>
    public QueueOrder Order { get; init; }

    /// <summary>Whether the other way round.</summary>
    public bool Descending { get; init; }

    /// <summary>Page, from 1.</summary>
    public int Page { get; init; } = 1;

    /// <summary>What a caller sees first: a reviewer what waits, by the date of the shift; a submitter its own, the latest first.</summary>
    public static QueueQuery Usual(Caller caller) => caller.SeesAll ? new() { State = Open, Order = QueueOrder.Shift } : new() { Order = QueueOrder.Age, Descending = true };

    /// <summary>What a query says; what it leaves out, or says in other words than ours, is as usual.</summary>
    public static QueueQuery Of(IEnumerable<KeyValuePair<string, StringValues>> query, Caller caller)
    {
        var said = query.ToDictionary(pair => pair.Key, pair => pair.Value.ToString(), StringComparer.Ordinal);
        var usual = Usual(caller);
        var order = Enum.TryParse<QueueOrder>(said.GetValueOrDefault("sort"), ignoreCase: true, out var sort) && Enum.IsDefined(sort) ? sort : (QueueOrder?)null;
        var state = said.GetValueOrDefault("state");
        return usual with
        {
            Search = said.GetValueOrDefault("search")?.Trim() ?? string.Empty,
            State = state is Open or Any || (Enum.TryParse<SubmissionState>(state, out var known) && Enum.IsDefined(known)) ? state : usual.State,
            Who = said.GetValueOrDefault("who") is "me" or "nobody" ? said["who"] : string.Empty,
            Earlier = said.GetValueOrDefault("earlier") is "true",
            Order = order ?? usual.Order,
            Descending = order is null ? usual.Descending : said.GetValueOrDefault("desc") is "true",
            Page = int.TryParse(said.GetValueOrDefault("page"), NumberStyles.None, CultureInfo.InvariantCulture, out var page) && page is > 0 and < 100_000 ? page : 1,
        };
    }

    /// <summary>What the form of a page says of the list from which it was opened; null: from none.</summary>
    public static QueueQuery? Of(string? list, Caller caller) => list is { Length: > 0 } ? Of(QueryHelpers.ParseQuery(list), caller) : null;

    /// <summary>The same for the register.</summary>
    public SubmissionFilter Filter(Caller caller) => new()
    {
        Search = Search,
        State = State is Open or Any ? null : Enum.Parse<SubmissionState>(State),
        OpenOnly = State is Open,
        LatestOnly = !Earlier,
        Assignee = Who switch { "me" => caller.Id, "nobody" => string.Empty, _ => null },
    };

    /// <summary>The query, beginning with a question mark.</summary>
    public string Text => QueryString.Create(
        new (string Name, string? Value)[]
        {
            ("search", Search.Length > 0 ? Search : null), ("state", State), ("who", Who.Length > 0 ? Who : null), ("earlier", Earlier ? "true" : null),
            ("sort", Order.ToString().ToLowerInvariant()), ("desc", Descending ? "true" : null), ("page", Page > 1 ? Page.ToString(CultureInfo.InvariantCulture) : null),
        }.Where(pair => pair.Value is not null).Select(pair => KeyValuePair.Create(pair.Name, pair.Value))).Value!;
}
