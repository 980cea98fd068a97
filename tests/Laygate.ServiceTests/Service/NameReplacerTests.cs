using System.Security.Cryptography;
using System.Text;
using Laygate.Register;
using Laygate.Service.Checking;
using Laygate.Service.Replacing;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.ServiceTests.Service;

/// <summary>
/// What counts as the name of a person, where it gives way, and what stays as it is. The rules are judgement (decision 24): in doubt a value is a name at its own key and none
/// elsewhere, so that no finding, number or word of the program is touched.
/// </summary>
public sealed class NameReplacerTests
{
    private static readonly Lazy<NameReplacer> Shared = new(() => new NameReplacer(new NameRules(new CheckDesk(Options.Create(new ServiceSettings()), TimeProvider.System))));

    [Theory]
    [InlineData("site engineer", "a role")]
    [InlineData("Site engineer", "a role")]
    [InlineData("Bauleiter des Auftraggebers", "no role that is listed, so a name")]
    [InlineData("Bauleiter", "a role")]
    [InlineData("kerb crew", "a role")]
    [InlineData("works office north", "no capital letter: no name")]
    [InlineData("A. Lind", "a name")]
    [InlineData("shift manager A. Lind", "a name")]
    [InlineData("李明", "a name")]
    public void A_role_is_no_name(string who, string what)
    {
        var text = $"hold_points:\n  - {{ id: base, owner: {who} }}\n";
        Assert.Equal(what.Contains("name", StringComparison.Ordinal) && !what.StartsWith("no capital", StringComparison.Ordinal) ? text.Replace(who, "(name replaced)", StringComparison.Ordinal) : text, Replaced(Text(text))[0]);
    }

    // As many as a plan of 1 MiB holds: what was found before is not gone through again for each.
    [Fact]
    public void A_name_may_stand_there_a_hundred_thousand_times()
    {
        const int Times = 100_000;
        var put = new EncodedText(string.Join(' ', Enumerable.Repeat("A. Lind,", Times))).With([("A. Lind", "(name replaced)")]);
        Assert.Equal(string.Join(' ', Enumerable.Repeat("(name replaced),", Times)), put, StringComparer.Ordinal);
    }

    [Fact]
    public void A_role_that_the_plan_states_is_none_either_unless_somebody_is_called_so()
    {
        Assert.Contains("owner: Kerb Master", Replaced(Text("plan: { people: [{ id: a, role: Kerb Master, name: A. Lind }] }\nhold_points: [{ owner: Kerb Master }]\n"))[0], StringComparison.Ordinal);
        Assert.DoesNotContain("A. Lind", Replaced(Text("plan: { people: [{ id: a, role: A. Lind, name: A. Lind }] }\nhold_points: [{ owner: A. Lind }]\n"))[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plan:\n  prepared: { name: A. Lind, date: 2027-05-03 }\n", "plan:\n  prepared: { name: (name replaced), date: 2027-05-03 }\n")]
    [InlineData("plan:\n  prepared:\n    name: 'A. Lind' # from the office\n", "plan:\n  prepared:\n    name: '(name replaced)' # from the office\n")]
    [InlineData("{\"plan\": {\"prepared\": {\"name\": \"A. L\\u0069nd\"}}}", "{\"plan\": {\"prepared\": {\"name\": \"(name replaced)\"}}}")]
    [InlineData("plan:\n  prepared:\n    name: |\n      A.\n      Lind\n    role: engineer\n", "plan:\n  prepared:\n    name: (name replaced)\n      \n      \n    role: engineer\n")]
    [InlineData("plan: { prepared: { name: \"A.\n  Lind\", role: engineer } }\r\n", "plan: { prepared: { name: \"(name replaced)\"\n  , role: engineer } }\r\n")]
    [InlineData("plan: { prepared: { name: &me A. Lind }, checked: { name: *me } }\n", "plan: { prepared: { name: &me (name replaced) }, checked: { name: (name replaced) } }\n")]
    [InlineData("\uFEFFplan: { prepared: { name: A. Lind } }\n", "\uFEFFplan: { prepared: { name: (name replaced) } }\n")]
    [InlineData("learnt: [{ records: [{ plan_hash: 9f86d081884c7d65, record_hash: 60303ae22b998861 }] }]\n", "learnt: [{ records: [{ plan_hash: (hash replaced), record_hash: (hash replaced) }] }]\n")]
    [InlineData("departures: [{ asked_by: A. Lind, approved_by: client }]\n", "departures: [{ asked_by: (name replaced), approved_by: client }]\n")]
    [InlineData("plan: { people: [{ call: channel 3 }, { call: +49 170 5550199 }] }\n", "plan: { people: [{ call: channel 3 }, { call: (name replaced) }] }\n")]
    public void Only_the_value_at_its_key_gives_way_and_lines_stay_lines(string before, string after) => Assert.Equal(after, Replaced(Text(before))[0]);

    [Fact]
    public void A_name_gives_way_as_whole_words_wherever_and_however_it_is_written()
    {
        var plan = Text("plan: { prepared: { name: \"Ö. D'Arcy\" } } # Ö. D'Arcy has seen it, not Ö. D'Arcyson\n");
        var html = new KeptContent(ContentKind.Document, 1, 0, "report.html", Utf8("<style>.a{font:\"Ö. D'Arcy\"}</style><td title=\"&#214;. D&#x27;Arcy\">&Ouml;.\u00A0D&#39;Arcy</td>"));
        var json = new KeptContent(ContentKind.Report, 1, 0, "report.json", Utf8("{\"a\":\"\\u00d6. D\\u0027Arcy, 12.50\",\"b\":12.50}"));
        var markdown = new KeptContent(ContentKind.Document, 1, 0, "sheet-en.md", Utf8("- **Ö\\. D'Arcy:** ☐ briefing"));
        var after = Replaced(plan, html, json, markdown);
        Assert.Equal("plan: { prepared: { name: \"(name replaced)\" } } # (name replaced) has seen it, not Ö. D'Arcyson\n", after[0]);
        Assert.Equal("<style>.a{font:\"Ö. D'Arcy\"}</style><td title=\"(name replaced)\">(name replaced)</td>", after[1]);
        Assert.Equal("{\"a\":\"(name replaced), 12.50\",\"b\":12.50}", after[2]);
        Assert.Equal("- **(name replaced):** ☐ briefing", after[3]);
    }

    // A surname that is a word of the trade, and what somebody may write at the key of a name to spoil a report.
    [Theory]
    [InlineData("Stone")]
    [InlineData("Fail")]
    [InlineData("Pass")]
    [InlineData("40 mm")]
    [InlineData("MPa")]
    [InlineData("12.5")]
    [InlineData("SAF-083")]
    [InlineData("2027-05-14T18:30:00Z")]
    public void What_is_also_a_word_or_a_number_of_a_report_gives_way_at_its_keys_alone(string name)
    {
        var report = new KeptContent(ContentKind.Report, 1, 0, "report.json", Utf8($"{{\"status\":\"{name}\",\"text\":\"{name} mastic asphalt, {name}\"}}"));
        var page = new KeptContent(ContentKind.Document, 1, 0, "report.html", Utf8($"<p>{name} mastic</p><tr><td>4</td><th scope=\"row\">plan.prepared.name</th><td>{name}</td></tr><tr><td>5</td><th scope=\"row\">mixes.a.what</th><td>{name}</td></tr>"));
        var after = Replaced(Text($"plan: {{ prepared: {{ name: \"{name}\" }} }}\n"), report, page);
        Assert.Equal(Encoding.UTF8.GetString(report.Bytes), after[1]);
        var isName = name.Any(char.IsLetter);

        // As the call of a person, or the hash of another text, no more than that.
        Assert.Equal(Encoding.UTF8.GetString(report.Bytes), Replaced(Text($"plan: {{ people: [{{ call: \"{name}\" }}] }}\nlearnt: [{{ records: [{{ plan_hash: \"{name}\" }}] }}]\n"), report)[1]);
        Assert.Equal(isName, after[0].Contains("(name replaced)", StringComparison.Ordinal));
        Assert.Equal(isName ? 1 : 0, after[2].Split("(name replaced)").Length - 1);
        Assert.Contains($"<th scope=\"row\">mixes.a.what</th><td>{name}</td>", after[2], StringComparison.Ordinal);
    }

    [Fact]
    public void The_hash_of_a_text_that_changes_gives_way_whole_and_short_and_no_other_one()
    {
        var plan = Text("plan: { prepared: { name: A. Lind } }\n");
        var (old, put) = (Hash(plan.Bytes), Hash(Utf8("plan: { prepared: { name: (name replaced) } }\n")));
        var other = Hash(Utf8("rules"));
        var page = new KeptContent(ContentKind.Document, 1, 0, "report.html", Utf8($"<code>{old}</code> hash {old[..12]}, {old[..12]}0, rules {other}"));
        Assert.Equal($"<code>{put}</code> hash {put[..12]}, {old[..12]}0, rules {other}", Replaced(plan, page)[1]);
    }

    [Fact]
    public void What_nobody_can_read_gives_way_whole_with_what_quotes_it()
    {
        var report = new KeptContent(ContentKind.Report, 1, 0, "report.json", Utf8("{\"files\":[{\"problems\":[{\"message\":\"There is no key `A. Lind`.\",\"hint\":\"Ask A. Lind.\",\"line\":3}]}]}"));
        var page = new KeptContent(ContentKind.Document, 1, 0, "report.html", Utf8("<p>There is no key A. Lind.</p>"));
        var after = Replaced(Text("plan: { peopel: [{ name: A. Lind }] }\n"), report, page);
        Assert.Equal(["(text replaced)\n", "{\"files\":[{\"problems\":[{\"message\":\"(text replaced)\",\"hint\":\"(text replaced)\",\"line\":3}]}]}", "(text replaced)\n"], after, StringComparer.Ordinal);
        Assert.Equal("(text replaced)\n", Replaced(Text("plan: [A. Lind\n"))[0]);
    }

    [Fact]
    public void Without_a_name_nothing_changes_and_a_second_time_nothing_changes_any_more()
    {
        Assert.Empty(Shared.Value.Replace([Text("plan: { id: a, title: Quay Road }\n")]).Contents);
        Assert.Empty(Shared.Value.Replace([Text("plan: { prepared: { name: (name replaced) } }\n")]).Contents);
        Assert.Empty(Shared.Value.Replace([Text("(text replaced)\n")]).Contents);
    }

    private static List<string> Replaced(params KeptContent[] contents)
    {
        var changed = Shared.Value.Replace(contents).Contents.ToDictionary(one => one.Content, one => one.Bytes);
        return [.. contents.Select(one => Encoding.UTF8.GetString(changed.GetValueOrDefault(one, one.Bytes)))];
    }

    private static KeptContent Text(string text) => new(ContentKind.Text, 0, 0, "plan.yaml", Utf8(text));

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
