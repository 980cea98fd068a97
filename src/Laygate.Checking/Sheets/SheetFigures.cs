using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sheets;

/// <summary>Figures of a sheet from quantities, stated measures and findings.</summary>
internal sealed class SheetFigures(QuantityContext context, Report report)
{
    /// <summary>Nothing is known.</summary>
    public static SheetFigure None { get; } = new(null, FigureKind.Computed);

    /// <summary>A quantity of an element.</summary>
    public SheetFigure Of(string quantity, string address)
    {
        if (context.Elements.Find(address) is not { } element || context.Get(quantity, element) is not { Value: NumberValue number } answer)
        {
            return None;
        }

        var unit = answer.Unit ?? context.UnitOf(context.Catalogue.Find(quantity)!);
        var kind = answer.Origin switch
        {
            Origin.Stated => FigureKind.Stated,
            Origin.Assumed => FigureKind.Assumed,
            _ => FigureKind.Computed,
        };
        return new SheetFigure(Shown(number.Si, unit, number.IsSpread ? number.Low : null, number.IsSpread ? number.High : null), kind) { Laid = CoolingMoment(answer) };
    }

    private static DateTimeOffset? CoolingMoment(Answer answer) =>
        answer.Working.Inputs.FirstOrDefault(input => string.Equals(input.Quantity, Working.WorstMoment, StringComparison.Ordinal)) is { Text: { } text }
        && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, out var moment)
            ? moment
            : null;

    /// <summary>A stated measure.</summary>
    public static SheetFigure Stated(IMeasure? measure) =>
        new(measure is null ? null : new ShownValue(measure.Number, measure.Unit.Spelling), FigureKind.Stated);

    /// <summary>A computed value in SI.</summary>
    public SheetFigure Computed(double? si, Unit? like, (string Metric, string Us) units) =>
        new(si is { } value && double.IsFinite(value) ? Shown(value, like ?? UnitOf(units)) : null, FigureKind.Computed);

    /// <summary>A mass per length, which no plan states and the table of units does not have: t/m or lb/ft.</summary>
    /// <param name="si">kg/m.</param>
    public SheetFigure PerLength(double si)
    {
        var (mass, length) = context.System == UnitSystem.UnitedStates ? ("lb", "ft") : ("t", "m");
        var (number, unit) = (UnitTable.Find(mass)!.FromSi(si) * UnitTable.Find(length)!.ToSi(1), $"{mass}/{length}");
        return new SheetFigure(double.IsFinite(number) ? new ShownValue(number, unit) : null, FigureKind.Computed);
    }

    /// <summary>One end of the fixed limit that a rule sets for a quantity; without a value where none does.</summary>
    public SheetFigure Limit(string quantity, string address, bool low)
    {
        var end = report.Findings
            .Where(finding => string.Equals(finding.Quantity, quantity, StringComparison.Ordinal) && string.Equals(finding.Address, address, StringComparison.Ordinal))
            .SelectMany(finding => new[] { finding.Limit, finding.OtherLimit }.OfType<ShownLimit>())
            .Where(limit => limit.Quantity is null)
            .Select(limit => low ? limit.Low : limit.High)
            .FirstOrDefault(end => end?.Number is not null);
        return new SheetFigure(end, FigureKind.Limit);
    }

    /// <summary>The unit of the plan's system.</summary>
    public Unit? UnitOf((string Metric, string Us) units) =>
        UnitTable.Find(context.System == UnitSystem.UnitedStates ? units.Us : units.Metric);

    /// <summary>A value in SI as shown.</summary>
    public static ShownValue Shown(double si, Unit? unit, double? low = null, double? high = null) => new(
        In(si, unit), unit?.Spelling ?? string.Empty, low is { } from ? In(from, unit) : null, high is { } to ? In(to, unit) : null);

    private static double In(double si, Unit? unit) => unit is null ? si : unit.FromSi(si);
}
