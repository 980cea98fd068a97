namespace Laygate.Engineering.Mat;

/// <summary>Weather for every moment at which a hot body may be laid.</summary>
/// <param name="Parts">Moments at which the weather bends, ends included, for each part of the time of laying over which it is known.</param>
/// <param name="At">Weather from a moment on.</param>
internal sealed record LayingWeather(IReadOnlyList<IReadOnlyList<DateTimeOffset>> Parts, Func<DateTimeOffset, MatWeather> At)
{
    /// <summary>A stated envelope, which holds at any moment that the hours leave out; null where there is none or nothing is left out.</summary>
    public MatWeather? Envelope { get; init; }

    /// <summary>Weather at every bend, and the envelope.</summary>
    public IReadOnlyList<MatWeather> Stated => field ??= [.. Parts.SelectMany(part => part).Select(At)];

    /// <summary>Whether two say the same at every moment.</summary>
    public bool IsSame(LayingWeather other) =>
        Parts.Count == other.Parts.Count && Parts.Zip(other.Parts).All(pair => pair.First.SequenceEqual(pair.Second))
        && Stated.Zip(other.Stated).All(pair => pair.First.IsSame(pair.Second))
        && (Envelope is null ? other.Envelope is null : other.Envelope is { } envelope && Envelope.IsSame(envelope));
}
