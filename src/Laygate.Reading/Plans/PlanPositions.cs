using System.Collections.Concurrent;
using System.Globalization;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>Where the values of a plan stand in its file.</summary>
/// <remarks>Nothing is indexed beforehand: a report asks for few of the some hundred values of a plan, but many findings are about one element. Serves several threads.</remarks>
public sealed class PlanPositions
{
    private readonly MapToken root;
    private readonly Lazy<PositionedToken> plan;
    private readonly ConcurrentDictionary<string, PositionedToken?> elements = new(StringComparer.Ordinal);

    internal PlanPositions(MapToken root)
    {
        this.root = root;
        plan = new Lazy<PositionedToken>(() => PlanAddresses.Plan(root));
    }

    /// <summary>Where the value of a key stands.</summary>
    /// <param name="address">Address of an element, for example <c>course:wearing</c> or <c>shift</c>; a pair stands for its upper course.</param>
    /// <param name="key">Key within the element with dots; items of lists by their id, course or station: <c>buffers.binder.capacity</c>. Empty for the element itself.</param>
    /// <returns>The value; where it is missing, the nearest key above it; where the element is missing, the start of the plan.</returns>
    public TextSpan Of(string address, string key = "")
    {
        return Find(address) is { } element ? Walk(element, key) : PlanAddresses.Above(root, address);
    }

    // Many findings are about the plan as a whole, whose keys are gathered from two places.
    private PositionedToken? Find(string address) =>
        string.Equals(address, PlanAddresses.OfPlan, StringComparison.Ordinal) ? plan.Value : elements.GetOrAdd(address, (one, tree) => PlanAddresses.Find(tree, one), root);

    /// <summary>Where every value under a key stands: one place for a single value, one for each number of a list of stations.</summary>
    /// <param name="address">Address of an element.</param>
    /// <param name="key">Key within the element; an empty one stands for the element itself, not for all that it holds.</param>
    internal IReadOnlyList<TextSpan> Within(string address, string key)
    {
        if (key.Length == 0 || Find(address) is not { } element)
        {
            return [Of(address, key)];
        }

        var (at, rest) = (element, key);
        while (rest.Length > 0)
        {
            if (at.Step(rest) is not { } next)
            {
                return [at.Span];
            }

            (at, rest) = next;
        }

        return [at.Span, .. Scalars(at.Token)];
    }

    private static IEnumerable<TextSpan> Scalars(YamlToken token) => token switch
    {
        ScalarToken scalar => [scalar.Span],
        MapToken map => map.Entries.SelectMany(entry => Scalars(entry.Value)),
        ListToken list => list.Items.SelectMany(Scalars),
        _ => [],
    };

    /// <summary>Where a value stands by its path from the top of the plan, list entries counted from 0: <c>courses[1].on</c>.</summary>
    /// <param name="path">The path.</param>
    /// <returns>The value; where it is missing, the nearest key above it.</returns>
    public TextSpan At(string path)
    {
        var at = new PositionedToken(root, TokenNames.Head(root).Span);
        foreach (var part in path.Split(['.', '['], StringSplitOptions.RemoveEmptyEntries))
        {
            var next = part.EndsWith(']')
                ? at.Item(int.Parse(part[..^1], CultureInfo.InvariantCulture))
                : at.Key(part);
            if (next is not { } found)
            {
                return at.Span;
            }

            at = found;
        }

        return at.Span;
    }

    private static TextSpan Walk(PositionedToken start, string key)
    {
        var at = start;
        var rest = key;
        while (rest.Length > 0)
        {
            if (at.Step(rest) is not { } next)
            {
                return at.Span;
            }

            (at, rest) = next;
        }

        return at.Span;
    }
}

/// <summary>A token and where to point when it is meant: a value itself, a group at its key, a list entry at its first key.</summary>
internal readonly record struct PositionedToken(YamlToken Token, TextSpan Span)
{
    /// <summary>The value of a key of this group.</summary>
    public PositionedToken? Key(string key)
    {
        if (Token is not MapToken map || map.Find(key) is not { } entry)
        {
            return null;
        }

        return new PositionedToken(entry.Value, entry.Value is ScalarToken { IsNull: false } ? entry.Value.Span : entry.Key.Span);
    }

    /// <summary>An entry of this list.</summary>
    public PositionedToken? Item(int index) =>
        Token is ListToken list && index < list.Items.Count ? Entry(list.Items[index]) : null;

    /// <summary>One step along a key with dots, and what is left of it.</summary>
    public (PositionedToken Next, string Left)? Step(string path) => Token switch
    {
        MapToken => StepIntoMap(path),
        ListToken list => StepIntoList(list, path),
        _ => null,
    };

    private (PositionedToken Next, string Left)? StepIntoMap(string path)
    {
        var dot = path.IndexOf('.', StringComparison.Ordinal);
        var key = dot < 0 ? path : path[..dot];
        return (Key(key) ?? Key(OtherForm(key))) is { } next ? (next, dot < 0 ? string.Empty : path[(dot + 1)..]) : null;
    }

    // A width or crossfall is one value or a list; a reference names either.
    private static string OtherForm(string key) => key switch
    {
        "width" => "widths",
        "widths" => "width",
        "crossfall" => "crossfalls",
        "crossfalls" => "crossfall",
        _ => key,
    };

    private static (PositionedToken Next, string Left)? StepIntoList(ListToken list, string path)
    {
        foreach (var item in list.Items)
        {
            // A station may hold a dot of its own, so whole names are compared.
            if (Name(item) is not { Length: > 0 } name || !path.StartsWith(name, StringComparison.Ordinal))
            {
                continue;
            }

            if (path.Length == name.Length)
            {
                return (Entry(item), string.Empty);
            }

            if (path[name.Length] == '.')
            {
                return (Entry(item), path[(name.Length + 1)..]);
            }
        }

        return null;
    }

    /// <summary>An entry of a list.</summary>
    public static PositionedToken Entry(YamlToken item) => new(item, TokenNames.Head(item).Span);

    /// <summary>By what an entry of a list is named in references: its id, course, station, depth or phase, or itself.</summary>
    public static string? Name(YamlToken item) => item switch
    {
        ScalarToken scalar => scalar.Text,
        MapToken map => ((map["id"] ?? map["course"] ?? map["at"] ?? map["depth"] ?? map["phase"]) as ScalarToken)?.Text,
        _ => null,
    };
}

/// <summary>Finds the elements of a plan by their addresses in the token tree.</summary>
internal static class PlanAddresses
{
    /// <summary>Address of the plan as a whole.</summary>
    public const string OfPlan = "plan";

    /// <summary>The element; null when the plan states none such.</summary>
    public static PositionedToken? Find(MapToken root, string address)
    {
        var colon = address.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            return Single(root, address);
        }

        var id = address[(colon + 1)..];
        return address[..colon] switch
        {
            "condition" => Path(root, ["site", "conditions", id]) ?? Path(root, ["site", id]),
            "pair" => InList(root, ["courses"], id[(id.IndexOf('+', StringComparison.Ordinal) + 1)..]),
            "interval" => InList(root, ["shifts"], id[(id.IndexOf('+', StringComparison.Ordinal) + 1)..]),
            "feeder" => Path(root, ["supply", "feeder"]) is { } feeder && string.Equals(PositionedToken.Name(feeder.Token), id, StringComparison.Ordinal) ? feeder : null,
            var kind => InList(root, ListOf(kind), id),
        };
    }

    /// <summary>What to point at when the element is missing: the block in which it would stand, or the start of the plan.</summary>
    public static TextSpan Above(MapToken root, string address)
    {
        var path = ListOf(address.Split(':')[0]);
        return (Path(root, path) ?? Path(root, [.. path.SkipLast(1)]) ?? Top(root)).Span;
    }

    // The plan itself holds the keys under `plan` and the blocks that are no element of their own.
    private static PositionedToken? Single(MapToken root, string kind) =>
        string.Equals(kind, OfPlan, StringComparison.Ordinal) ? Plan(root) : Path(root, [kind.Replace('-', '_')]);

    /// <summary>The plan as a whole.</summary>
    public static PositionedToken Plan(MapToken root)
    {
        var own = root["plan"] as MapToken;
        var span = root.Find("plan")?.Key.Span ?? TokenNames.Head(root).Span;
        return new PositionedToken(own is null ? root : new MapToken([.. own.Entries, .. root.Entries.Where(entry => own.Find(entry.Key.Text) is null)], root.Span), span);
    }

    /// <summary>Keys of the list in which elements of a kind stand; empty for what a plan has once.</summary>
    public static string[] ListOf(string kind) => kind switch
    {
        "mix" => ["mixes"],
        "course" or "pair" => ["courses"],
        "run" => ["runs"],
        "plant" => ["supply", "plants"],
        "trucks" => ["supply", "trucks"],
        "feeder" => ["supply", "feeder"],
        "paver" => ["pavers"],
        "phase" => ["rolling", "phases"],
        "roller" => ["rolling", "rollers"],
        "bond-coat" => ["bond_coats"],
        "joint" => ["joints"],
        "test" => ["tests"],
        "hold-point" => ["hold_points"],
        "contingency" => ["contingencies"],
        "measure" => ["measures"],
        "overhead-line" => ["site", "overhead_lines"],
        "light" => ["site", "lights"],
        "exposure" => ["site", "exposures"],
        "condition" => ["site", "conditions"],
        "job-shift" or "interval" => ["shifts"],
        "job-course" => ["courses"],
        "job-run" => ["runs"],
        "job-joint" => ["joints"],
        "job-lot" => ["lots"],
        "job-plant" => ["supply", "plants"],
        _ => [],
    };

    private static PositionedToken? InList(MapToken root, string[] path, string id)
    {
        if (Path(root, path)?.Token is not ListToken list)
        {
            return null;
        }

        var item = list.Items.FirstOrDefault(item => string.Equals(PositionedToken.Name(item), id, StringComparison.Ordinal));
        return item is null ? null : PositionedToken.Entry(item);
    }

    private static PositionedToken? Path(MapToken root, string[] keys)
    {
        PositionedToken? at = keys.Length == 0 ? null : Top(root);
        foreach (var key in keys)
        {
            at = at?.Key(key);
        }

        return at;
    }

    private static PositionedToken Top(MapToken root) => new(root, TokenNames.Head(root).Span);
}
