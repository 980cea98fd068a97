using System.Text.Json;
using System.Text.RegularExpressions;
using Laygate.Reading.Personal;

namespace Laygate.ConformanceTests.Schema;

/// <summary>Keys that may name a person are declared in the schema, so that the register can replace names; a new one cannot be forgotten.</summary>
public sealed partial class PersonalKeysTests
{
    // Groups and lists whose own keys are declared, firms and authorities, and widths and signs about nobody.
    private static readonly string[] NoNames =
    [
        "identity.prepared", "identity.checked", "identity.approved", "identity.people", "identity.client", "identity.contractor", "overhead_line.owner", "traffic_space.standing", "traffic_space.leaning", "early_friction.signs",
    ];

    [Fact]
    public void Every_key_that_says_who_is_declared_or_is_known_to_name_nobody()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "schemas", "plan.schema.json")));
        var asking = schema.RootElement.GetProperty("definitions").EnumerateObject().Where(definition => definition.Value.TryGetProperty("properties", out _))
            .SelectMany(definition => definition.Value.GetProperty("properties").EnumerateObject().Select(key => (Key: $"{definition.Name}.{key.Name}", key.Value)))
            .Where(key => key.Value.TryGetProperty("description", out var said) && Who().IsMatch(said.GetString()!)).ToList();
        Assert.NotEmpty(asking);
        Assert.Equal(NoNames.Order(StringComparer.Ordinal), asking.Where(key => !key.Value.TryGetProperty("$comment", out _)).Select(key => key.Key).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(asking.Where(key => key.Value.TryGetProperty("$comment", out _)), key => Assert.StartsWith("holds ", key.Value.GetProperty("$comment").GetString(), StringComparison.Ordinal));
    }

    /// <summary>By these names a value is known again where only the key and the value are shown, however deep the key stands in its schema.</summary>
    [Fact]
    public void The_names_of_all_keys_about_persons_are_known_and_a_role_is_none() =>
        Assert.Equal("approved_by asked_by breaks by call decided_by deputy name owner plan_hash record_hash released_by who", string.Join(' ', PersonalKeys.Names.Order(StringComparer.Ordinal)));

    [Theory]
    [InlineData("plan: { prepared: { name: A. Lind } }", 1)]
    [InlineData("job: 1\nplan: { checked: { name: A. Lind } }\nshifts: [{ id: a, runs: [b], hold_points: [{ owner: A. Lind }], plan: { people: [{ id: c, name: A. Lind, deputy: B. Roe }] } }]", 4)]
    [InlineData("parts: 1\npeople: [{ id: a, name: A. Lind }]\nmeasures: [{ id: b, who: A. Lind }]\nhold_points: [{ id: c, released_by: A. Lind }]", 3)]
    [InlineData("plan: { people: [foreman] }\nlocation: { name: Quay Road }\nmixes: [{ name: AC 16 }]", 0)]
    public void Plans_jobs_and_files_of_parts_declare_the_same_keys(string text, int places) =>
        Assert.Equal(places, PersonalKeys.Find(System.Text.Encoding.UTF8.GetBytes(text))!.Places.Count);

    [GeneratedRegex(@"\b(?:who|whom|person|telephone|signs?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Who();
}
