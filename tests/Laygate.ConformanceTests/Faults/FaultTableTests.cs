using System.Globalization;
using System.Text;
using Xunit.Abstractions;

namespace Laygate.ConformanceTests.Faults;

/// <summary>Writes the table of all faults, for people, to artifacts/faults.</summary>
public sealed class FaultTableTests(ITestOutputHelper output)
{
    [FactOfFullRun]
    public void The_table_is_written()
    {
        var table = Table();
        var folder = Directory.CreateDirectory(Path.Combine(Repository.Root, "artifacts", "faults")).FullName;
        File.WriteAllText(Path.Combine(folder, "table.txt"), table);
        File.WriteAllText(Path.Combine(folder, "said.txt"), Details());
        output.WriteLine(table);
        Assert.Contains("answered for the right reason", table, StringComparison.Ordinal);
    }

    private static string Table()
    {
        var text = new StringBuilder();
        Shares(text, "first list", FaultLists.First);
        Shares(text, "second list", FaultLists.More);
        Shares(text, "both", FaultLists.Faults);
        text.Append(CultureInfo.InvariantCulture, $"harmless changes that add a finding: {FaultLists.Harmless.Count(change => HarmlessTests.Added(change).Count > 0)} of {FaultLists.Harmless.Count}\n");
        text.Append(CultureInfo.InvariantCulture, $"faults that take another warning or failure away: {FaultAnswers.Removals.Select(removal => removal.Id).Distinct(StringComparer.Ordinal).Count()}\n\n");
        foreach (var family in FaultLists.Faults.GroupBy(fault => fault.Family, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"{family.Key,-18} {family.Count(IsAnswered),3} of {family.Count(),3}   open: {string.Join(' ', family.Where(fault => !IsAnswered(fault)).Select(fault => fault.Id))}\n");
        }

        text.Append("\nopen\n");
        foreach (var open in FaultAnswers.Open)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {open.Id,-6} {FaultTests.Find(open.Id).What}: {open.Why}\n");
        }

        text.Append("\nonly warned of where a failure is expected\n");
        foreach (var answer in FaultAnswers.Answers.Where(answer => answer.Short is not null))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {answer.Id,-6} {answer.Rule} {FaultTests.Find(answer.Id).What}: {answer.Short}\n");
        }

        return text.ToString();
    }

    private static void Shares(StringBuilder text, string name, IReadOnlyList<Fault> faults)
    {
        var severe = faults.Where(fault => fault.MustFail).ToList();
        text.Append(CultureInfo.InvariantCulture, $"{name}: {faults.Count(IsAnswered)} of {faults.Count} answered for the right reason ({Percent(faults.Count(IsAnswered), faults.Count)}); of {severe.Count} that must fail {severe.Count(Fails)} do ({Percent(severe.Count(Fails), severe.Count)})\n");
    }

    private static string Percent(int part, int whole) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / whole:F0} %");

    private static bool IsAnswered(Fault fault) => FaultAnswers.Answers.Any(answer => answer.Id == fault.Id);

    private static bool Fails(Fault fault) => FaultAnswers.Answers.Any(answer => answer.Id == fault.Id && (answer.Status is "fail" or "refuse"));

    private static string Details()
    {
        var text = new StringBuilder();
        foreach (var fault in FaultLists.Faults.Concat(FaultLists.Harmless))
        {
            var verdict = FaultCheck.Of(fault, FaultAnswers.Answers.Any(answer => answer.Id == fault.Id && answer.Whole) || fault.Family == "truck");
            text.Append(CultureInfo.InvariantCulture, $"\n{fault.Id} [{string.Join('/', fault.Expected)}] {fault.Plan}: {fault.What}\n");
            text.AppendJoin(string.Empty, verdict.Refusals.Select(refusal => $"   refused: {refusal}\n"));
            text.AppendJoin(string.Empty, verdict.Added.Select(said => $"   + {said}: {said.Text}\n"));
            text.AppendJoin(string.Empty, verdict.Removed.Select(said => $"   - {said}\n"));
        }

        return text.ToString();
    }
}
