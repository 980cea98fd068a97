using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Cases;

/// <summary>A plan that cases change.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="IsSound">Whether it has the shape of a plan.</param>
internal sealed record BasePlan(MapToken Plan, bool IsSound)
{
    /// <summary>
    /// Whether a changed copy still has the shape of a plan, as far as its changed parts tell: the others were looked at once, and the schema says
    /// nothing about top keys together but which are needed and which there are.
    /// </summary>
    /// <returns>False where the whole has to be looked at, also to say what is wrong.</returns>
    public bool Keeps(MapToken changed, LoadedSchema schema)
    {
        var root = schema.Root.Resolved;
        if (!IsSound || root.AllOf.Count + root.AnyOf.Count + root.OneOf.Count > 0 || root.Not is not null)
        {
            return false;
        }

        var parts = changed.Entries.Where(entry => !ReferenceEquals(Plan[entry.Key.Text], entry.Value) || root.Required.Contains(entry.Key.Text, StringComparer.Ordinal));
        return SchemaChecker.Check(new YamlDocument(new MapToken([.. parts], changed.Span), 1), schema).Count == 0;
    }
}
