namespace Laygate.Engineering.Mat;

/// <summary>The worst that a question finds over all moments of laying.</summary>
/// <param name="Weather">Weather from the moment on at which it is worst.</param>
/// <param name="Value">The expected answer there.</param>
internal sealed record WorstMoment(MatWeather Weather, double Value);

/// <summary>
/// Finds, for each question, the moment of laying at which its expected answer is the most unfavourable: at every bend of the weather and at most an
/// hour apart, then closer wherever the answers say that the worst may lie between. A bend of wind or sun is worst shortly before it comes, so the
/// worst moment need not be one that the plan states.
/// </summary>
internal static class WorstMoments
{
    /// <summary>Answers that differ by less than this share count as equal: well below the half per cent to which a worst value is to be relied on.</summary>
    private const double Alike = 1e-3;

    /// <summary>The same for small answers, s or K.</summary>
    private const double Least = 0.05;

    /// <summary>How far, as a share, a low point between its neighbours may lie above the lowest to be looked at closer.</summary>
    private const double Near = 0.2;

    /// <summary>Most moments before it is looked closer; a longer time of laying is looked at in wider steps.</summary>
    private const int Most = 48;

    /// <summary>How often the distance to the neighbours is halved: from an hour to less than a minute.</summary>
    private const int Halvings = 6;

    /// <summary>Finds them.</summary>
    /// <param name="weather">Weather at the moments of laying.</param>
    /// <param name="highIsWorse">For each question, whether a high answer is the unfavourable one.</param>
    /// <param name="ask">Expected answers to all questions at one moment; null where nothing can be solved.</param>
    /// <returns>For each question its worst moment; null where it has no answer at any. Questions whose worst moments are alike share one.</returns>
    public static WorstMoment?[] Find(LayingWeather weather, IReadOnlyList<bool> highIsWorse, Func<MatWeather, double[]?> ask)
    {
        var asked = new List<Asked>();
        foreach (var part in weather.Parts)
        {
            asked.AddRange(Search(part, highIsWorse, at => Ask(weather.At(at), at)));
        }

        if (weather.Envelope is { } envelope)
        {
            asked.Add(Ask(envelope, default));
        }

        return Share([.. asked.Where(one => one.Badness is not null)], highIsWorse);

        Asked Ask(MatWeather at, DateTimeOffset moment) => new(moment, at, ask(at) is { } answers
            ? [.. answers.Select((answer, i) => highIsWorse[i] ? answer : -answer)]
            : null);
    }

    private static List<Asked> Search(IReadOnlyList<DateTimeOffset> bends, IReadOnlyList<bool> highIsWorse, Func<DateTimeOffset, Asked> ask)
    {
        List<Asked> asked = [.. Spread(bends).Select(ask)];
        for (var i = 0; i < Halvings; i++)
        {
            var closer = Between(asked, highIsWorse.Count);
            if (closer.Count == 0)
            {
                break;
            }

            asked = [.. asked.Concat(closer.Select(ask)).OrderBy(one => one.At)];
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

    /// <summary>Moments half way to the neighbours of every worst point, where something worse may hide on the way.</summary>
    private static SortedSet<DateTimeOffset> Between(List<Asked> asked, int questions)
    {
        var halves = new SortedSet<DateTimeOffset>();
        for (var q = 0; q < questions; q++)
        {
            var worst = asked.Select(one => one.Of(q)).Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.NaN).Max();
            for (var i = 0; i < asked.Count; i++)
            {
                var here = asked[i].Of(q);
                if (here >= worst - Math.Max(Least, Near * Math.Abs(worst)) && !(Beside(i - 1) > here) && !(Beside(i + 1) > here))
                {
                    foreach (var step in (int[])[-1, 1])
                    {
                        if (MayHide(asked, i, step, q) is { } half)
                        {
                            halves.Add(half);
                        }
                    }
                }
            }

            double Beside(int i) => i < 0 || i >= asked.Count ? double.NaN : asked[i].Of(q);
        }

        return halves;
    }

    /// <summary>The moment half way to a neighbour, unless both are alike or the neighbour lies on the straight line to the next one: there the answers only fall.</summary>
    private static DateTimeOffset? MayHide(List<Asked> asked, int i, int step, int question)
    {
        if (i + step < 0 || i + step >= asked.Count)
        {
            return null;
        }

        var (here, beside) = (asked[i], asked[i + step]);
        if (AreAlike(here.Of(question), beside.Of(question)))
        {
            return null;
        }

        if (i + (2 * step) is var next && next >= 0 && next < asked.Count)
        {
            var share = (beside.At - here.At) / (asked[next].At - here.At);
            if (AreAlike(here.Of(question) + (share * (asked[next].Of(question) - here.Of(question))), beside.Of(question)))
            {
                return null;
            }
        }

        var half = here.At + ((beside.At - here.At) / 2);
        return half == here.At || half == beside.At ? null : half;
    }

    /// <summary>Gives each question its worst moment; one that does for many questions is taken for all of them.</summary>
    private static WorstMoment?[] Share(IReadOnlyList<Asked> asked, IReadOnlyList<bool> highIsWorse)
    {
        var worst = Enumerable.Range(0, highIsWorse.Count)
            .Select(q => asked.Select(one => one.Of(q)).Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.NaN).Max()).ToArray();
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

    private static bool AreAlike(double a, double b) => a.Equals(b) || (double.IsFinite(a + b) && Math.Abs(a - b) <= Math.Max(Least, Alike * Math.Abs(b)));

    /// <summary>Answers at one moment, turned so that more is worse.</summary>
    private sealed record Asked(DateTimeOffset At, MatWeather Weather, double[]? Badness)
    {
        public double Of(int question) => Badness is null ? double.NaN : Badness[question];
    }
}
