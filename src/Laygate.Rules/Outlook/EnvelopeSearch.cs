using Laygate.Engineering.Outlook;
using Laygate.Model.Measures;
using Laygate.Rules.Results;

namespace Laygate.Rules.Outlook;

/// <summary>
/// Finds how far air, base and wind may go. Looked for on expected values over the whole range in coarse steps and then
/// finely; what is found is carried back until it holds with its spread.
/// </summary>
internal sealed class EnvelopeSearch(WeatherJudge judge, WeatherPlans plans, MatEnvelope stated, UnitSystem system)
{
    private const int Coarse = 5;
    private const int MostBack = 12;
    private const double Coldest = -20;
    private const double Warmest = 40;
    private const double Calm = 0;
    private const double Stormiest = 20;

    private static readonly WeatherAxis[] Axes = [WeatherAxis.Air, WeatherAxis.Base, WeatherAxis.Wind];
    private static readonly double[] Shares = [0.25, 0.5, 0.75];

    public WorkableWeather Find()
    {
        var alone = Axes.Select(Alone).ToList();
        var pairs = new List<PairLimit>();
        for (var i = 0; i < Axes.Length; i++)
        {
            for (var j = i + 1; j < Axes.Length; j++)
            {
                pairs.AddRange(judge.EnvelopeIsOpen ? [] : Pairs(alone[i], Axes[j]));
            }
        }

        return new WorkableWeather(alone, pairs) { IsUnknown = judge.EnvelopeIsOpen };
    }

    private AxisLimit Alone(WeatherAxis axis) => judge.EnvelopeIsOpen ? Outermost(axis) : Bounded(axis);

    // How far it may go nobody knows; where a rule that was judged fails, it ends for certain.
    private AxisLimit Outermost(WeatherAxis axis)
    {
        var safe = Worst(axis, stated, LayingVerdict.Warn);
        var beyond = safe is not { } at ? stated : Next(axis, at) is { } next ? With(stated, axis, next) : null;
        var broken = beyond is null ? [] : judge.Broken(plans.In(beyond), withSpread: true);
        var fails = broken is [{ Status: Status.Fail } first, ..] ? first : null;
        return new AxisLimit(axis, Shown(axis, Of(stated, axis)), null, null, fails) { NotBeyond = fails is null ? null : Shown(axis, safe) };
    }

    private AxisLimit Bounded(WeatherAxis axis)
    {
        var go = Worst(axis, stated, LayingVerdict.Pass);
        var safe = Worst(axis, stated, LayingVerdict.Warn);
        var edge = go ?? safe;
        var beyond = edge is not { } at ? stated : Next(axis, at) is { } next ? With(stated, axis, next) : null;
        var broken = beyond is null ? [] : judge.Broken(plans.In(beyond), withSpread: true);
        return new AxisLimit(axis, Shown(axis, Of(stated, axis)), Shown(axis, go), Shown(axis, safe), broken is [var first, ..] ? first : null);
    }

    private IEnumerable<PairLimit> Pairs(AxisLimit first, WeatherAxis second)
    {
        var level = first.AllPass is null ? LayingVerdict.Warn : LayingVerdict.Pass;
        if ((first.AllPass ?? first.NoFailure)?.Number is not { } shown)
        {
            yield break;
        }

        var unit = UnitOf(first.Axis);
        var (from, to) = (Of(stated, first.Axis), unit.ToSi(shown));
        foreach (var value in Shares.Select(share => unit.ToSi(Math.Round(unit.FromSi(from + (share * (to - from))) * 2) / 2)).Distinct())
        {
            yield return new PairLimit(first.Axis, Shown(first.Axis, value)!, second, Shown(second, Worst(second, With(stated, first.Axis, value), level)), level);
        }
    }

    /// <summary>The worst value of an axis at which the verdict is no worse than a level, SI; null when none is.</summary>
    private double? Worst(WeatherAxis axis, MatEnvelope others, LayingVerdict level)
    {
        var values = Values(axis);
        var good = -1;
        for (var i = 0; i < values.Count; i += Coarse)
        {
            good = Holds(i, withSpread: false) ? i : good;
        }

        if (good < 0)
        {
            return null;
        }

        var bad = Math.Min(values.Count, good + Coarse);
        while (bad - good > 1)
        {
            var middle = (good + bad) / 2;
            (good, bad) = Holds(middle, withSpread: false) ? (middle, bad) : (good, middle);
        }

        for (var back = 0; back <= MostBack && good - back >= 0; back++)
        {
            if (Holds(good - back, withSpread: true))
            {
                return values[good - back];
            }
        }

        return null;

        bool Holds(int i, bool withSpread) =>
            WeatherJudge.Verdict(judge.Broken(plans.In(With(others, axis, values[i])), withSpread)) <= level;
    }

    /// <summary>Values of an axis in whole degrees or half metres per second, mildest first, SI.</summary>
    private List<double> Values(WeatherAxis axis)
    {
        var unit = UnitOf(axis);
        var wind = axis == WeatherAxis.Wind;
        var step = wind && system == UnitSystem.Metric ? 0.5 : 1;
        var (first, last) = wind ? (Calm, Stormiest) : (Warmest, Coldest);
        var (from, to) = (Math.Round(unit.FromSi(first)), Math.Round(unit.FromSi(last)));
        var count = (int)Math.Round(Math.Abs(to - from) / step);
        return [.. Enumerable.Range(0, count + 1).Select(i => unit.ToSi(from + (i * step * Math.Sign(to - from))))];
    }

    private double? Next(WeatherAxis axis, double value)
    {
        var values = Values(axis);
        var i = values.FindIndex(other => Math.Abs(other - value) < 1e-6);
        return i >= 0 && i + 1 < values.Count ? values[i + 1] : null;
    }

    private Unit UnitOf(WeatherAxis axis) => UnitTable.Find((axis, system) switch
    {
        (WeatherAxis.Wind, UnitSystem.UnitedStates) => "mph",
        (WeatherAxis.Wind, _) => "m/s",
        (_, UnitSystem.UnitedStates) => "°F",
        _ => "°C",
    })!;

    private ShownValue? Shown(WeatherAxis axis, double? si) =>
        si is { } value ? new ShownValue(Math.Round(UnitOf(axis).FromSi(value), 3), UnitOf(axis).Spelling) : null;

    private ShownValue Shown(WeatherAxis axis, double si) => Shown(axis, (double?)si)!;

    private static double Of(MatEnvelope weather, WeatherAxis axis) => axis switch
    {
        WeatherAxis.Air => weather.Air,
        WeatherAxis.Base => weather.Base,
        _ => weather.Wind,
    };

    private static MatEnvelope With(MatEnvelope weather, WeatherAxis axis, double value) => axis switch
    {
        WeatherAxis.Air => weather with { Air = value },
        WeatherAxis.Base => weather with { Base = value },
        _ => weather with { Wind = value },
    };
}
