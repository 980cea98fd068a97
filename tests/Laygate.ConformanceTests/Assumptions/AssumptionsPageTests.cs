using System.Globalization;
using System.Text;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;

namespace Laygate.ConformanceTests.Assumptions;

/// <summary>The page that lists every assumption with its range and where it comes from; written anew with <c>LAYGATE_APPROVE</c>.</summary>
public sealed class AssumptionsPageTests
{
    private static readonly (string Word, string Title)[] Parts =
    [
        ("mix", "Mix"), ("mat", "Mat"), ("material", "Materials"), ("existing", "What is paved on"), ("bond", "Bond coat"), ("paver", "Paver"), ("trucks", "Trucks"),
        ("plant", "Plant"), ("rolling", "Rolling"), ("supply", "Supply"), ("weather", "Weather"), ("site", "Site"), ("size", "First sizes of a job that is not planned yet; a check never takes these"),
    ];

    [Fact]
    public void The_page_lists_every_assumption() => Approved.File_holds("docs/assumptions.md", Page());

    private static string Page()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""
            # What is assumed

            Where a plan is silent on one of these {LaygateAssumptions.All.Count(one => !one.Id.StartsWith("size.", StringComparison.Ordinal))} values, the check takes the value here and names it at every finding that rests on it. A finding that warns or fails says whether another value within the range would turn it ([reports.md](reports.md#assumptions-that-decide)).
            State the value in the plan and the assumption is gone. A specification may replace any of them by its id, with its own source.
            "Judgement" is this project's own, without a publication. This page is written from the program. Local codes and the people licensed to apply them govern.


            """);
        foreach (var part in LaygateAssumptions.All.GroupBy(one => one.Id.Split('.')[0], StringComparer.Ordinal).OrderBy(part => Array.FindIndex(Parts, known => known.Word == part.Key)))
        {
            text.Append(CultureInfo.InvariantCulture, $"## {Parts.Single(known => known.Word == part.Key).Title}\n\n| id | meaning | value | range | evidence | source |\n|---|---|---|---|---|---|\n");
            foreach (var one in part.OrderBy(one => one.Id, StringComparer.Ordinal))
            {
                text.Append(CultureInfo.InvariantCulture, $"| `{one.Id}` | {one.Meaning} | {Measured(one.Number, one.Unit)} | {Range(one)} | {Words(one.Evidence)} | {one.Source} |\n");
            }

            text.Append('\n');
        }

        return $"{text.ToString().TrimEnd()}\n";
    }

    private static string Range(Assumption one) => one.Low == one.High ? "none" : $"{Number(one.Low)} to {Measured(one.High, one.Unit)}";

    private static string Measured(double number, string unit) => $"{Number(number)} {unit}".TrimEnd();

    private static string Number(double number) => number.ToString("0.########", CultureInfo.InvariantCulture);

    private static string Words(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.SecondHand => "second-hand",
        Evidence.Recalled => "recalled",
        Evidence.Derived => "derived",
        Evidence.Judgement => "judgement",
        _ => throw new ArgumentOutOfRangeException(nameof(evidence), evidence, null),
    };
}
