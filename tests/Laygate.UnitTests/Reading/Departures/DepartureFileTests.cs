using Laygate.Checking.Scaffolding;
using Laygate.Reading.Departures;
using Laygate.Rules.Results;
using Laygate.UnitTests.Checking.Scaffolding;

namespace Laygate.UnitTests.Reading.Departures;

/// <summary>Files of departures: what is read, and where what is wrong is found.</summary>
public sealed class DepartureFileTests
{
    private const string Sound = """
        departures:
          - id: dep-001
            rule: LAY-001
            address: course:wearing
            reason: The kerbs fix the level.
            compensating_measure: One more core.
            asked_by: A
            approved_by: B
            approved_on: 2026-11-02
            expires_on: 2027-06-30
            accepted: 1.0 in
            reference: letter 17

        """;

    [Fact]
    public void A_departure_is_read_as_written()
    {
        var departure = Assert.Single(Load(Sound).Departures);
        Assert.Equal(("dep-001", "LAY-001", "course:wearing", "letter 17", "own.yaml"), (departure.Id, departure.Rule, departure.Address, departure.Reference, departure.File));
        Assert.Equal((new DateOnly(2026, 11, 2), new DateOnly(2027, 6, 30)), (departure.ApprovedOn, departure.ExpiresOn));
        Assert.Equal(("1.0 in", 0.0254), (departure.Accepted!.Text, departure.Accepted.Si!.Value));
    }

    [Theory]
    [InlineData("rule: LAY-001", "rule: SAF-001", 3, 11, "`SAF-001` guards lives (severity A): nobody can permit a departure from it.")]
    [InlineData("rule: LAY-001", "rule: LAY-009", 3, 11, "There is no rule `LAY-009` in this rule book.")]
    [InlineData("accepted: 1.0 in", "accepted: 4 °C", 11, 15, null)]
    [InlineData("accepted: 1.0 in", "accepted: thin", 11, 15, null)]
    [InlineData("expires_on: 2027-06-30", "expires_on: 2026-11-01", 10, 17, "The departure ends before it is permitted.")]
    [InlineData("expires_on: 2027-06-30", "expires_on: 2027-06-31", 10, 17, "`expires_on`: there is no day `2027-06-31`.")]
    [InlineData("    expires_on: 2027-06-30\n", "", 2, 5, null)]
    [InlineData("reason: The kerbs fix the level.", "reason: TO FILL IN why", 5, 13, "`reason` is still a blank.")]
    public void What_is_wrong_is_said_with_its_place(string right, string wrong, int line, int column, string? message)
    {
        var set = Load(Sound.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Empty(set.Departures);
        var problem = Assert.Single(set.Problems);
        Assert.Equal(("own.yaml", line, column), (problem.File, problem.Position!.Line, problem.Position.Column));
        Assert.Equal(message ?? problem.Message, problem.Message);
    }

    [Theory]
    [InlineData("dep-001", "course:other", 1)]
    [InlineData("dep-002", "course:wearing", 1)]
    [InlineData("dep-002", "course:other", 0)]
    public void Ids_and_places_stand_once(string id, string address, int problems)
    {
        var second = Sound.Replace("departures:\n", string.Empty, StringComparison.Ordinal).Replace("dep-001", id, StringComparison.Ordinal).Replace("course:wearing", address, StringComparison.Ordinal);
        Assert.Equal(problems, Load(Sound + second).Problems.Count);
    }

    [Fact]
    public void A_file_that_is_not_there_stops_the_run() =>
        Assert.Equal("There is no such file of departures.", Assert.Single(DepartureFiles.Load(["own.yaml"], SmallPack.Book, new Files()).Problems).Message);

    [Fact]
    public void A_scaffold_is_refused_until_its_blanks_are_filled_in_and_never_overwrites()
    {
        var first = DepartureEdit.Add(SmallPack.Book, "own.yaml", null, "LAY-001", "course:wearing").Text!;
        var second = DepartureEdit.Add(SmallPack.Book, "own.yaml", SmallPack.Bytes(first), "LAY-001", "course:binder").Text!;
        Assert.StartsWith(first, second, StringComparison.Ordinal);
        Assert.Contains("id: dep-002", second, StringComparison.Ordinal);
        Assert.NotEmpty(Load(second).Problems);
        var filled = second.Split('\n').Select(line => line.Split(": TO FILL IN") is [var key, _]
            ? $"{key}: {(key.EndsWith("_on", StringComparison.Ordinal) ? "2027-01-01" : key.EndsWith("accepted", StringComparison.Ordinal) ? "25 mm" : "said")}" : line);
        Assert.Equal(2, Load(string.Join('\n', filled)).Departures.Count);
    }

    [Fact]
    public void Nobody_can_begin_a_departure_from_a_rule_that_guards_lives() =>
        Assert.Null(DepartureEdit.Add(SmallPack.Book, "own.yaml", null, "SAF-001", "site").Text);

    private static DepartureSet Load(string text)
    {
        var files = new Files { Texts = { ["own.yaml"] = text } };
        return DepartureFiles.Load(["own.yaml"], SmallPack.Book, files);
    }
}
