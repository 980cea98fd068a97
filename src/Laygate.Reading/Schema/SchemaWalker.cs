using Laygate.Reading.Yaml;

namespace Laygate.Reading.Schema;

/// <summary>Walks a document along a schema and words every mismatch. One instance per check.</summary>
internal sealed class SchemaWalker(LoadedSchema schema)
{
    public List<Found> Walk(YamlToken root) => Walk(root, schema.Root, NamedPlace.Top(root, schema.DocumentName));

    private List<Found> Walk(YamlToken token, SchemaNode node, NamedPlace place)
    {
        var found = new List<Found>();
        var kinds = Needs.KindsOf(node);
        if (token is ScalarToken { IsNull: true } && !kinds.HasFlag(ValueKinds.Null))
        {
            found.Add(NoValue(place));
        }
        else if (!Fits(token, kinds))
        {
            found.Add(new Found(ScalarWording.WrongKind(token, node, place), Fit: Misfit.OtherForm));
        }
        else
        {
            foreach (var part in node.Conjuncts)
            {
                WalkPart(token, part, node, place, found);
            }
        }

        return found;
    }

    private IEnumerable<Found> WalkInner(YamlToken token, SchemaNode node, NamedPlace place) =>
        Walk(token, node, place).Select(inner => inner.FromOutside());

    private void WalkPart(YamlToken token, SchemaNode node, SchemaNode whole, NamedPlace place, List<Found> found)
    {
        var before = found.Count;
        if (token is MapToken map)
        {
            WalkMap(map, node, place, found);
        }
        else if (token is ListToken list)
        {
            WalkList(list, node, place, found);
        }
        else if (token is ScalarToken scalar)
        {
            found.AddRange(ScalarWording.Check(scalar, node, whole, place));
        }

        if (found.Count == before && node.Alternatives.Count > 0)
        {
            WalkAlternatives(token, node, whole, place, found);
        }

        if (node.Not is not null && Walk(token, node.Not, place).Count == 0)
        {
            found.Add(new Found(Excluded(token, node.Not, place)));
        }
    }

    private void WalkMap(MapToken map, SchemaNode node, NamedPlace place, List<Found> found)
    {
        var unknown = new List<ScalarToken>();
        foreach (var (key, value) in map.Entries)
        {
            if (node.Properties.TryGetValue(key.Text, out var property))
            {
                found.AddRange(WalkInner(value, property, NamedPlace.Of(key)));
            }
            else if (node.KeyPattern?.Matches(key.Text) == true)
            {
                found.AddRange(WalkInner(value, node.KeyPatternValue!, NamedPlace.Of(key)));
            }
            else if (!node.AllowsOtherKeys)
            {
                unknown.Add(key);
            }
        }

        var wording = new KeyWording(schema.Places, node, map, place);
        // Only so many are listed; looking for names near to thousands more would take seconds.
        found.AddRange(unknown.Select((key, at) => new Found(wording.Unknown(key, withAdvice: at < ReadingLimits.Problems))));
        // A mistyped key is one mistake, not two.
        var mistyped = unknown.Take(ReadingLimits.Problems).SelectMany(key => wording.MeantBy(key).Take(1)).ToHashSet(StringComparer.Ordinal);
        found.AddRange(node.Required.Where(key => map.Find(key) is null && !mistyped.Contains(key)).Select(key => new Found(wording.Missing(key))));
    }

    private void WalkList(ListToken list, SchemaNode node, NamedPlace place, List<Found> found)
    {
        found.AddRange(ListWording.Check(list, node, place).Select(problem => new Found(problem)));
        if (node.Item is null)
        {
            return;
        }

        for (var at = 0; at < list.Items.Count; at++)
        {
            found.AddRange(WalkInner(list.Items[at], node.Item, place.Entry(list.Items[at], at)));
        }
    }

    private void WalkAlternatives(YamlToken token, SchemaNode node, SchemaNode whole, NamedPlace place, List<Found> found)
    {
        var tried = node.Alternatives.Select(branch => (branch, problems: Walk(token, branch, place))).ToList();
        var fitting = tried.Where(pair => pair.problems.Count == 0).Select(pair => pair.branch).ToList();
        if (fitting.Count > 1 && node.OneOf.Count > 0)
        {
            found.Add(new Found(SeveralForms(token, fitting, place)));
        }

        if (fitting.Count > 0)
        {
            return;
        }

        if (token is ScalarToken scalar)
        {
            found.AddRange(ScalarAlternatives(scalar, whole, place, tried.Select(pair => pair.problems).ToList()));
        }
        else
        {
            found.AddRange(tried.Select(pair => pair.problems).MinBy(problems => (problems.Exists(problem => problem.Fit == Misfit.OtherForm), problems.Count))!);
        }
    }

    // A scalar that fits no form is told all forms at once, unless only one of them is for scalars like it.
    private static List<Found> ScalarAlternatives(ScalarToken scalar, SchemaNode node, NamedPlace place, List<List<Found>> tried)
    {
        var near = tried.Where(problems => problems.TrueForAll(problem => problem.Fit != Misfit.OtherForm)).ToList();
        return near.Count == 1 ? near[0] : [new Found(ScalarWording.WrongForm(scalar, node, place))];
    }

    private static bool Fits(YamlToken token, ValueKinds kinds) => kinds == ValueKinds.None || token switch
    {
        MapToken => kinds.HasFlag(ValueKinds.Map),
        ListToken => kinds.HasFlag(ValueKinds.List),
        ScalarToken { Kind: ScalarKind.WholeNumber } => kinds.HasFlag(ValueKinds.WholeNumber),
        ScalarToken { Kind: ScalarKind.DecimalNumber } => kinds.HasFlag(ValueKinds.Number),
        ScalarToken { Kind: ScalarKind.Null } => kinds.HasFlag(ValueKinds.Null),
        _ => kinds.HasFlag(ValueKinds.Text),
    };

    private static Found NoValue(NamedPlace place) => new(
        new ReadingProblem(
            $"{place.Capital} has no value.",
            place.Anchor,
            place.IsEntry ? "Write a value or remove the entry." : "Write a value or remove the key."),
        IsMissingValue: true);

    private static ReadingProblem SeveralForms(YamlToken token, List<SchemaNode> fitting, NamedPlace place) => new(
        $"{place.Capital} could be {string.Join(" or ", fitting.Select(Needs.Of).Distinct(StringComparer.Ordinal))}; it must be clear which.",
        token is ScalarToken ? token.Span : place.Anchor);

    private static ReadingProblem Excluded(YamlToken token, SchemaNode not, NamedPlace place)
    {
        var reason = Needs.FirstSentence(not);
        return new ReadingProblem(
            reason.Length > 0 ? $"{place.Capital} cannot be so: {reason}." : $"{place.Capital} cannot be {Needs.Of(not)}.",
            token is ScalarToken ? token.Span : place.Anchor);
    }
}
