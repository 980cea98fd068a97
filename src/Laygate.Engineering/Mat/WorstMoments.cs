namespace Laygate.Engineering.Mat;

/// <summary>The worst that a question finds over all moments of laying.</summary>
/// <param name="Weather">Weather from the moment on at which it is worst.</param>
/// <param name="Value">The expected answer there.</param>
internal sealed record WorstMoment(MatWeather Weather, double Value);

/// <summary>
/// Finds, for each question, the moment of laying at which its expected answer is the most unfavourable: at every bend of the weather and at most an
/// hour apart, then closer wherever the answers beside an interval say that something worse may lie in it (see <see cref="HiddenPeak"/>). A bend of wind
/// or sun is worst shortly before it comes, so the worst moment need not be one that the plan states.
/// </summary>
internal static class WorstMoments
{
    /// <summary>Answers that differ by less than this share count as equal: well below the half per cent to which a worst value is to be relied on.</summary>
    private const double AlikeShare = 1e-3;

    /// <summary>The same for small answers, s or K.</summary>
    private const double Least = 0.05;

    /// <summary>Most moments before it is looked closer; a longer time of laying is looked at in wider steps.</summary>
    private const int Most = 48;

    /// <summary>How often it is looked closer: an hour is halved to the closest distance in eight steps, and what rises steeply needs some more.</summary>
    private const int Rounds = 12;

    /// <summary>Over this time an answer may come to rise twice as fast as before: a mat takes tens of minutes. 2,000 random shifts have none that needs less.</summary>
    private static readonly TimeSpan Doubling = TimeSpan.FromMinutes(30);

    /// <summary>Moments this close are not told apart.</summary>
    private static readonly TimeSpan Closest = TimeSpan.FromSeconds(20);

    /// <summary>Finds them.</summary>
    /// <param name="weather">Weather at the moments of laying.</param>
    /// <param name="highIsWorse">For each question, whether a high answer is the unfavourable one.</param>
    /// <param name="ask">Expected answers to all questions in the weather of each of several moments; null where nothing can be solved.</param>
    /// <returns>For each question its worst moment; null where it has no answer at any. Questions whose worst moments are alike share one.</returns>
    public static WorstMoment?[] Find(LayingWeather weather, IReadOnlyList<bool> highIsWorse, Func<IReadOnlyList<MatWeather>, IReadOnlyList<double[]?>> ask)
    {
        var asked = new List<Asked>();
        foreach (var part in weather.Parts)
        {
            asked.AddRange(Search(part, highIsWorse.Count, moments => Ask([.. moments.Select(weather.At)], moments)));
        }

        if (weather.Envelope is { } envelope)
        {
            asked.AddRange(Ask([envelope], [default]));
        }

        return Share([.. asked.Where(one => one.Badness is not null)], highIsWorse);

        IEnumerable<Asked> Ask(IReadOnlyList<MatWeather> at, IReadOnlyList<DateTimeOffset> moments) =>
            ask(at).Select((answers, i) => new Asked(moments[i], at[i], answers is null ? null : [.. answers.Select((answer, q) => highIsWorse[q] ? answer : -answer)]));
    }

    private static List<Asked> Search(IReadOnlyList<DateTimeOffset> bends, int questions, Func<IReadOnlyList<DateTimeOffset>, IEnumerable<Asked>> ask)
    {
        List<Asked> asked = [.. ask([.. Spread(bends)])];
        for (var i = 0; i < Rounds; i++)
        {
            var closer = Between(asked, questions);
            if (closer.Count == 0)
            {
                break;
            }

            asked = [.. asked.Concat(ask(closer)).OrderBy(one => one.At)];
        }

        return asked;
    }

    /// <summary>The bends, and moments between them where they lie more than an hour apart.</summary>
    private static IEnumerable<DateTimeOffset> Spread(IReadOnlyList<DateTimeOffset> bends)
    {
        var step = Math.Max(3600, (bends[^1] - bends[0]).TotalSeconds / Most);
        yield return bends[0];
        for (var i = 1; i < bends.Count; i++)
        {
            var gap = bends[i] - bends[i - 1];
            var count = (int)Math.Ceiling((gap.TotalSeconds - 1) / step);
            for (var k = 1; k < count; k++)
            {
                yield return bends[i - 1] + (gap * k / count);
            }

            yield return bends[i];
        }
    }

    /// <summary>In each interval the moment at which some question may be worse than at all that were asked; one, as its answers serve all questions.</summary>
    private static List<DateTimeOffset> Between(List<Asked> asked, int questions)
    {
        var worst = Worst(asked, questions);
        var closer = new List<DateTimeOffset>();
        for (var i = 0; i + 1 < asked.Count; i++)
        {
            var length = asked[i + 1].At - asked[i].At;
            var peaks = length <= Closest ? [] : Enumerable.Range(0, questions).Where(q => double.IsFinite(worst[q])).Select(q => Peak(asked, i, q, worst[q]));
            if (peaks.Where(peak => peak.Gain > 1).OrderByDescending(peak => peak.Gain).FirstOrDefault() is { Gain: > 1 } most)
            {
                closer.Add(asked[i].At + (length * most.Share));
            }
        }

        return closer;
    }

    /// <summary>Where in an interval the highest answer may lie, and by how many times what counts as equal it would exceed the worst.</summary>
    private static (double Share, double Gain) Peak(List<Asked> asked, int i, int question, double worst)
    {
        var length = asked[i + 1].At - asked[i].At;
        var peak = HiddenPeak.Of(Rise(i - 1, i), asked[i].Of(question), asked[i + 1].Of(question), Rise(i + 2, i + 1), Alike(worst), 1 + (length / Doubling));
        return (peak.Share, (peak.Value - worst) / Alike(worst));

        // How much the line from one moment to the next rises over the length of the interval.
        double Rise(int from, int to) => from < 0 || from >= asked.Count
            ? double.NaN
            : (asked[to].Of(question) - asked[from].Of(question)) * (length / (asked[to].At - asked[from].At).Duration());
    }

    /// <summary>Gives each question its worst moment; one that does for many questions is taken for all of them.</summary>
    private static WorstMoment?[] Share(IReadOnlyList<Asked> asked, IReadOnlyList<bool> highIsWorse)
    {
        var worst = Worst(asked, highIsWorse.Count);
        var found = new WorstMoment?[worst.Length];
        var open = Enumerable.Range(0, worst.Length).Where(q => !double.IsNaN(worst[q])).ToList();
        while (open.Count > 0)
        {
            var best = asked.MaxBy(one => open.Count(q => AreAlike(one.Of(q), worst[q])))!;
            foreach (var q in open.Where(q => AreAlike(best.Of(q), worst[q])).ToList())
            {
                found[q] = new WorstMoment(best.Weather, highIsWorse[q] ? best.Of(q) : -best.Of(q));
                open.Remove(q);
            }
        }

        return found;
    }

    private static double[] Worst(IReadOnlyList<Asked> asked, int questions) =>
        [.. Enumerable.Range(0, questions).Select(q => asked.Select(one => one.Of(q)).Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.NaN).Max())];

    private static bool AreAlike(double a, double b) => a.Equals(b) || (double.IsFinite(a + b) && Math.Abs(a - b) <= Alike(b));

    private static double Alike(double value) => Math.Max(Least, AlikeShare * Math.Abs(value));

    /// <summary>Answers at one moment, turned so that more is worse.</summary>
    private sealed record Asked(DateTimeOffset At, MatWeather Weather, double[]? Badness)
    {
        public double Of(int question) => Badness is null ? double.NaN : Badness[question];
    }
}
