using System.Globalization;
using System.Text;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Records;
using Laygate.Rules.Results;

namespace Laygate.Checking.Scaffolding;

/// <summary>Lays out the empty files of a record with their mapping, in the units, zone and width of a plan.</summary>
public static class RecordScaffold
{
    /// <summary>Distance of the columns of a thermal profile, m and ft; judgement: a person at the camera can follow it, and any other export is mapped.</summary>
    private const double MetricStep = 0.5;

    private const double UsStep = 2;

    /// <summary>The files for the plans of a file.</summary>
    /// <param name="tools">What reads plans.</param>
    /// <param name="file">Name of the plan.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="parts">Files that plans use.</param>
    /// <returns>The files, or why the plan cannot be used.</returns>
    public static (IReadOnlyList<NewFile> Files, IReadOnlyList<Problem> Problems) For(PlanTools tools, string file, byte[] bytes, IPartFiles parts)
    {
        var read = tools.Reader.Read(file, bytes, parts);
        return read.Problems.Count > 0 ? ([], read.Problems) : (Files(read.Plans[0].Plan), []);
    }

    private static IReadOnlyList<NewFile> Files(Plan plan)
    {
        var isUs = plan.Courses.Count > 0 && plan.Courses[0].Thickness.Unit.System == UnitSystem.UnitedStates;
        var offsets = Offsets(plan, isUs);
        return
        [
            new NewFile(RecordReader.MappingFile, Mapping(plan, isUs, offsets)),
            .. RecordKinds.All.Select(kind => new NewFile(FileOf(kind), string.Join(',', Columns(kind, offsets)) + "\r\n")),
        ];
    }

    private static string FileOf(RecordKind kind) => kind.Name + ".csv";

    private static IEnumerable<string> Columns(RecordKind kind, IReadOnlyList<string> offsets) =>
        kind.Quantities.Where(quantity => quantity.LaidOut).SelectMany(quantity => quantity.Form == CellForm.Grid ? offsets : [quantity.Name]);

    private static List<string> Offsets(Plan plan, bool isUs)
    {
        var width = plan.Runs.SelectMany(run => run.WidthAlong).Select(width => width.Value.Si).DefaultIfEmpty(isUs ? 12 * 0.3048 : 4).Max();
        var (step, unit) = isUs ? (UsStep, 0.3048) : (MetricStep, 1);
        var count = Math.Clamp((int)Math.Floor((width / unit / step) + 1e-9), 1, 60);
        return [.. Enumerable.Range(0, count).Select(i => ((i + 0.5) * step).ToString("0.##", CultureInfo.InvariantCulture))];
    }

    private static string Mapping(Plan plan, bool isUs, IReadOnlyList<string> offsets)
    {
        var text = new StringBuilder($"""
            # The mapping of the record of a shift: which raw file holds what, and how its columns are written.
            # Any export of a scale, a spreadsheet or a camera is read by changing this file; the raw files stay as they are.
            # laygate ledger PLAN FOLDER
            format: 1
            record:
              plan: {plan.Identity.Id}
              # about: what the record says about itself, shown in every output
              # water: 997 kg/m3                     # where cores are weighed in water
              # uncertainty: relative standard uncertainties; without all four no difference is proven
              #   mass: 0.2 %
              #   density: 1.0 %
              #   width: 0.5 %
              #   length: 0.1 %
            files:

            """);
        foreach (var kind in RecordKinds.All)
        {
            Append(text, kind, plan.Shift, isUs, offsets);
        }

        return text.ToString().ReplaceLineEndings("\n");
    }

    private static void Append(StringBuilder text, RecordKind kind, Shift? shift, bool isUs, IReadOnlyList<string> offsets)
    {
        text.Append(CultureInfo.InvariantCulture, $"""
              - file: {FileOf(kind)}                 # {kind.Meaning}
                holds: {kind.Name}
                encoding: utf-8
                delimiter: comma
                decimal_mark: point

            """);
        if (kind.Quantities.Any(quantity => quantity.Form == CellForm.Moment))
        {
            // A shift over a change of clock needs the name of its zone, which no plan states.
            var zone = shift is { Zone: { } known } && (shift.ZoneAtEnd is null || shift.ZoneAtEnd == known) ? Offset(known) : Blanks.Mark + " such as Europe/Berlin";
            text.Append(CultureInfo.InvariantCulture, $"    zone: {zone}\n");
            text.Append(shift?.Date is { } day ? $"    day: {day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}                    # of the first row; times need no date\n" : string.Empty);
        }

        text.Append("    columns:\n");
        foreach (var quantity in kind.Quantities.Where(quantity => quantity.LaidOut))
        {
            var unit = isUs ? quantity.Unit.Us : quantity.Unit.Metric;
            var grid = quantity.Form == CellForm.Grid ? $", last_column: \"{offsets[^1]}\", header_unit: {(isUs ? "ft" : "m")}" : string.Empty;
            var words = quantity.Words.Count > 0 ? $"; one of {string.Join(", ", quantity.Words)}" : string.Empty;
            text.Append(CultureInfo.InvariantCulture, $"      - {{ column: {(grid.Length > 0 ? $"\"{offsets[0]}\"" : quantity.Name)}, quantity: {quantity.Name}{(unit.Length > 0 ? $", unit: {unit}" : string.Empty)}{grid} }}   # {quantity.Meaning}{words}\n");
        }
    }

    private static string Offset(TimeSpan zone) => (zone < TimeSpan.Zero ? "-" : "+") + zone.ToString(@"hh\:mm", CultureInfo.InvariantCulture);
}
