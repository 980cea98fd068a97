using System.Text;
using Laygate.Checking;
using Laygate.Checking.Records;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;

namespace Laygate.UnitTests.Checking.Records;

/// <summary>Records below a folder, each with the plan that it names. Plans and records are invented.</summary>
public sealed class RecordFolderTests
{
    private static readonly PlanTools Tools = new();

    [Fact]
    public void A_record_of_a_trial_length_is_none_of_a_shift()
    {
        var files = Files(("plan.yaml", Plan("small")), ("night/record.yaml", Mapping("small")), ("night/mat.csv", "at,value\n22:00,140\n"), ("trial/record.yaml", Mapping("small, of: trial-length")), ("trial/mat.csv", "at,value\n22:00,141\n"));
        var (records, problems) = Find(files);
        Assert.Empty(problems);
        Assert.Equal("jobs/night/record.yaml", Assert.Single(records).Mapping);
    }

    [Fact]
    public void A_record_without_its_plan_is_named_and_the_others_are_kept()
    {
        var files = Files(("plan.yaml", Plan("small")), ("a/record.yaml", Mapping("other")), ("a/mat.csv", "at,value\n22:00,140\n"), ("b/record.yaml", Mapping("small")), ("b/mat.csv", "at,value\n22:00,140\n"));
        var (records, problems) = Find(files);
        Assert.Equal("jobs/a/record.yaml", Assert.Single(problems).File);
        Assert.Equal("jobs/b/record.yaml", Assert.Single(records).Mapping);
    }

    // A shift that stood twice among those that are learnt from would be predicted by itself.
    [Theory]
    [InlineData("small", "2027-05-14", "small", "2027-05-15", "140", "141", null)]
    [InlineData("small", "2027-05-14", "other", "2027-05-14", "140", "141", null)]
    [InlineData("small", "2027-05-14", "small", "2027-05-14", "140", "141", "small")]
    [InlineData("small", "2027-05-14", "other", "2027-05-15", "140", "140", "small")]
    public void A_shift_stands_twice_where_plan_and_day_or_the_raw_files_are_the_same(string one, string day, string another, string otherDay, string value, string otherValue, string? twice)
    {
        RecordedShift[] shifts = [Shift(one, day, value), Shift(another, otherDay, otherValue)];
        Assert.Equal(twice, Learning.Twice(shifts));
    }

    private static RecordedShift Shift(string plan, string day, string value)
    {
        var record = new RuleFolderInMemory("rec", Files(("record.yaml", Mapping(plan)), ("mat.csv", $"at,value\n22:00,{value}\n")));
        var (shift, problems) = RecordedShift.Open(Tools, "plan.yaml", Encoding.UTF8.GetBytes(Plan(plan, day)), new NoPartFiles(), record);
        Assert.Empty(problems);
        return shift!;
    }

    private static (IReadOnlyList<FoundRecord> Records, IReadOnlyList<Laygate.Rules.Results.Problem> Problems) Find(Dictionary<string, byte[]> files) => RecordFolder.Find(
        Tools, new RuleFolderInMemory("jobs", files),
        path => new RuleFolderInMemory(path, files.Where(file => file.Key.StartsWith(path + "/", StringComparison.Ordinal)).ToDictionary(file => file.Key[(path.Length + 1)..], file => file.Value, StringComparer.Ordinal)),
        new NoPartFiles());

    private static Dictionary<string, byte[]> Files(params (string Name, string Text)[] files) => files.ToDictionary(file => file.Name, file => Encoding.UTF8.GetBytes(file.Text), StringComparer.Ordinal);

    private static string Plan(string id, string day = "2027-05-14") =>
        $"format: 1\nplan: {{ id: {id}, stage: release }}\nshift: {{ date: {day}, start: \"21:15\", end: \"05:00\", zone: +02:00 }}\ncourses: [{{ id: c, mix: m, thickness: 40 mm }}]\n";

    private static string Mapping(string plan) => $$"""
        format: 1
        record: { plan: {{plan}} }
        files:
          - file: mat.csv
            holds: mat-temperatures
            encoding: utf-8
            delimiter: comma
            decimal_mark: point
            zone: +02:00
            day: 2027-05-14
            columns:
              - { column: at, quantity: at }
              - { column: value, quantity: value, unit: °C }
        """;
}
