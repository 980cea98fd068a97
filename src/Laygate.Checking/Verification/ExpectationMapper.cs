using System.Globalization;
using Laygate.Engineering.Cooling;
using Laygate.Model.Measures;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>Turns one table of expected values of a conduction case into checks.</summary>
internal sealed class ExpectationMapper(CaseFields fields, ConductionQuestion question)
{
    private readonly VerifiedKind kind = Kind(fields.Text("quantity"));

    public IReadOnlyList<ExpectedValue> Map()
    {
        var dimension = Dimension(kind);
        var unit = fields.ValueUnit(dimension);
        var tolerance = fields.Tolerance(dimension);
        var places = new PlaceMapper(fields, question, kind).Map();
        if (Refused() is { } refused)
        {
            fields.Problems.Add(refused);
            return [];
        }

        return [.. fields.Groups("rows").SelectMany(row => Row(row, places, unit, tolerance))];
    }

    private static VerifiedKind Kind(string? word) => word switch
    {
        "flux" => VerifiedKind.Flux,
        "crossing-time" => VerifiedKind.CrossingTime,
        "amplitude-ratio" => VerifiedKind.AmplitudeRatio,
        "lag" => VerifiedKind.Lag,
        "heat-balance-gap" => VerifiedKind.HeatBalanceGap,
        _ => VerifiedKind.Temperature,
    };

    private static CaseDimension Dimension(VerifiedKind kind) => kind switch
    {
        VerifiedKind.Temperature => CaseDimension.Temperature,
        VerifiedKind.Flux => CaseDimension.Irradiance,
        VerifiedKind.CrossingTime or VerifiedKind.Lag => CaseDimension.Duration,
        _ => CaseDimension.Plain,
    };

    private bool IsWave => kind is VerifiedKind.AmplitudeRatio or VerifiedKind.Lag;

    private ReadingProblem? Refused()
    {
        if (!IsWave)
        {
            return null;
        }

        if (question.Problem.Top is not TopBoundary.GivenTemperature { Amplitude: > 0 } wave)
        {
            return new ReadingProblem("Amplitude and lag need a skin with a temperature that swings.", fields["quantity"]!.Span, "Give the skin a `temperature_wave`.");
        }

        return wave.Period > question.Problem.Duration
            ? new ReadingProblem("The solve is shorter than one period of the wave.", fields["quantity"]!.Span, "Lengthen `duration`.")
            : null;
    }

    private List<ExpectedValue> Row(CaseFields row, IReadOnlyList<CasePlace> places, Unit? unit, CaseTolerance tolerance)
    {
        var values = row.Items("values");
        if (values.Count != places.Count)
        {
            row.Problems.Add(new ReadingProblem(
                string.Create(CultureInfo.InvariantCulture, $"The row has {values.Count} {(values.Count == 1 ? "value" : "values")} for {places.Count} {(places.Count == 1 ? "place" : "places")}."), row["values"]!.Span, "Give one value per place."));
            return [];
        }

        var time = Time(row);
        var below = Below(row);
        return [.. places.Select((place, at) => new ExpectedValue(
            new VerifiedQuantity(kind, place.Shown, place.Layer, place.Depth, row.Text("time"), row.Text("below")),
            CaseFields.Value((ScalarToken)values[at]), unit, tolerance, Computation(place.Place, time, below), values[at].Span))];
    }

    private double Time(CaseFields row)
    {
        var isNeeded = kind is VerifiedKind.Temperature or VerifiedKind.Flux;
        if (row["time"] is { } token && !isNeeded)
        {
            row.Problems.Add(new ReadingProblem("This quantity has no time.", token.Span, "Remove `time`."));
        }
        else if (isNeeded && row["time"] is null)
        {
            row.Problems.Add(new ReadingProblem("The row needs a time.", row.Span, "Add `time`, such as `time: 300 s`."));
        }

        var time = row.Number("time", CaseDimension.Duration) ?? 0;
        if (row["time"] is { } stated && (time > question.Problem.Duration || time < 0))
        {
            row.Problems.Add(new ReadingProblem("The time is not within the duration of the solve.", stated.Span, "Lengthen `duration`, or correct the time."));
        }

        return time;
    }

    private double Below(CaseFields row)
    {
        var isNeeded = kind == VerifiedKind.CrossingTime;
        if (isNeeded == (row["below"] is not null))
        {
            return row.Number("below", CaseDimension.Temperature) ?? 0;
        }

        row.Problems.Add(isNeeded
            ? new ReadingProblem("The row needs the temperature that is crossed.", row.Span, "Add `below`, such as `below: 80 °C`.")
            : new ReadingProblem("Only a crossing time has a temperature that is crossed.", row["below"]!.Span, "Remove `below`."));
        return 0;
    }

    private Func<CoolingCurve?, double?> Computation(CoolingPlace place, double time, double below) => kind switch
    {
        VerifiedKind.Flux => curve => curve?.FluxBelow(place.Layer, time),
        VerifiedKind.CrossingTime => curve => curve?.FirstBelow(place, below),
        VerifiedKind.AmplitudeRatio => curve => curve is null ? null : Wave.At(curve, place, question.Problem).Ratio,
        VerifiedKind.Lag => curve => curve is null ? null : Wave.At(curve, place, question.Problem).Lag,
        VerifiedKind.HeatBalanceGap => curve => curve?.Balance() is { Brought: not 0 } heat ? heat.Gap / heat.Brought : null,
        _ => curve => curve?.Value(place, time),
    };
}
