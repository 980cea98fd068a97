using System.Security.Cryptography;
using System.Text;
using Laygate.Engineering.Measured;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>Learns from the measured temperatures of several shifts, with where it comes from.</summary>
public static class Learning
{
    private static readonly Unit Percent = UnitTable.Find("%")!;
    private static readonly Unit Kelvin = UnitTable.Find("K")!;

    /// <summary>Learns.</summary>
    /// <param name="shifts">Plans with the records of their shifts.</param>
    /// <param name="id">Id of the entry that plans will name.</param>
    /// <param name="today">Day on which it is worked out.</param>
    public static LearnReport Of(IReadOnlyList<RecordedShift> shifts, string id, DateOnly today)
    {
        var fit = MatFits.Of([.. shifts.Select(shift => (shift.Context, shift.Record))]);
        List<LearntShift> from = [.. shifts.Select(shift => new LearntShift(shift.Identity.Id, shift.Context.Plan.Shift?.Date, shift.Hash, HashOf(shift.Record), shift.Record.Uncertainty))];
        return new LearnReport(id, fit, from, fit.MayBeStored ? With(fit, shifts, from, id, today) : null);
    }

    /// <summary>The id of a plan whose shift stands in the list more than once: left out, it would be predicted by itself; null where each stands once.</summary>
    /// <param name="shifts">Plans with the records of their shifts.</param>
    public static string? Twice(IReadOnlyList<RecordedShift> shifts) => shifts
        .GroupBy(shift => HashOf(shift.Record), StringComparer.Ordinal).Concat(shifts.GroupBy(shift => $"{shift.Identity.Id} {shift.Context.Plan.Shift?.Date:yyyy-MM-dd}", StringComparer.Ordinal))
        .FirstOrDefault(same => same.Count() > 1)?.First().Identity.Id;

    private static LearntValues? With(MatFit fit, IReadOnlyList<RecordedShift> shifts, List<LearntShift> from, string id, DateOnly today)
    {
        var plans = shifts.Select(shift => shift.Context.Plan).ToList();
        var readings = fit.HeldOut.Select(one => one.Before.Compared.Count).ToList();
        return MatFits.Values(id, fit.Mixes, shifts.Count, fit.Conductivity, fit.Laying) is not { } values ? null : values with
        {
            Plants = Names(plans.SelectMany(plan => plan.Supply?.Plants ?? []).Select(plant => plant.Id)),
            Machines = Names(plans.SelectMany(plan => plan.Pavers.Select(paver => paver.Id).Concat((plan.Supply?.Trucks ?? []).Select(trucks => trucks.Id)))),
            Made = today,
            About = string.Join(' ', Names(shifts.Select(shift => shift.Record.About).OfType<string>())) is { Length: > 0 } about ? about : null,
            Readings = readings.Sum(),
            HeldOut = new HeldOut
            {
                InsideBefore = new Measure<Ratio>(Math.Round(100 * fit.Inside.Before), Percent),
                InsideAfter = new Measure<Ratio>(Math.Round(100 * fit.Inside.After), Percent),
                OffBefore = new Measure<TemperatureDelta>(Math.Round(fit.Off.Before, 1), Kelvin),
                OffAfter = new Measure<TemperatureDelta>(Math.Round(fit.Off.After, 1), Kelvin),
            },
            Records = [.. from.Select((shift, i) => new LearntRecord { Plan = shift.PlanId, Date = shift.Date, PlanHash = shift.PlanHash, RecordHash = shift.RecordHash, Readings = readings[i] })],
        };
    }

    private static IReadOnlyList<string> Names(IEnumerable<string> names) => [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private static string HashOf(ShiftRecord record) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Concat(record.Files.OrderBy(file => file.File, StringComparer.Ordinal).Select(file => $"{file.File} {file.Hash}\n")))));
}
