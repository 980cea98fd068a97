using Laygate.Engineering.Formulas;
using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Acceptance;

/// <summary>A place to sample.</summary>
/// <param name="Sublot">Number of the sublot, from 1.</param>
/// <param name="Number">Number of the place in the sublot, from 1.</param>
/// <param name="Along">Distance from the start of the run, m.</param>
/// <param name="Across">Distance from the left edge, m.</param>
/// <param name="First">First random number of the draw, 0 to 1.</param>
/// <param name="Second">Second random number.</param>
public sealed record SamplingPlace(int Sublot, int Number, double Along, double Across, double First, double Second);

/// <summary>
/// Random places, stratified: so many in each sublot. The numbers of a sublot belong to seed, course and sublot alone, so that what comes later
/// moves no place that was drawn, and anybody can draw them again.
/// </summary>
public static class SamplingPlaces
{
    /// <summary>The method, in words for a record.</summary>
    public const string Method = "stratified; in each sublot r1 · length along and margin + r2 · (width − 2 · margin) across; r1, r2 from SplitMix64, stream (seed, number of the course from the lowest, sublot), the next two of its numbers for each place";

    /// <summary>The places of one sublot.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="series">What tells draws of one seed apart, such as the number of the course.</param>
    /// <param name="sublot">Number of the sublot, from 1.</param>
    /// <param name="from">Where the sublot begins, m.</param>
    /// <param name="length">Its whole length, m, also where less of it is laid yet.</param>
    /// <param name="width">Width of the mat at a distance, m.</param>
    /// <param name="margin">Distance that is kept from each edge, m.</param>
    /// <param name="count">Places.</param>
    public static IReadOnlyList<SamplingPlace> Of(ulong seed, int series, int sublot, double from, double length, Func<double, double> width, double margin, int count)
    {
        var state = RandomStream.Start(seed, series, sublot);
        var places = new List<SamplingPlace>(count);
        for (var i = 0; i < count; i++)
        {
            var (first, second) = (RandomStream.Fraction(ref state), RandomStream.Fraction(ref state));
            var along = from + (first * length);
            places.Add(new SamplingPlace(sublot, i + 1, along, margin + (second * Math.Max(0, width(along) - (2 * margin))), first, second));
        }

        return places;
    }

    /// <summary>Place on a grid that a random number names, along and across; a number of places that is exceeded begins again.</summary>
    /// <param name="number">N, 1: random number.</param>
    /// <param name="length">L, m: length.</param>
    /// <param name="width">W, m: width.</param>
    /// <param name="step">d, m: step of the grid and distance from the edges.</param>
    /// <returns>x, m; null outside the range.</returns>
    [Formula("x", "x = (N div k) · d + d, k = W/d − 1; with even k · d the grid begins one step from the edge", "UFC 3-250-03, 15 May 2001, random sampling on a grid of 0.5 m (read)", "N not below zero, L and W at least 2 d, d above zero; otherwise no result")]
    public static double? GridAlong(int number, double length, double width, double step) =>
        Across(width, step) is { } rows && number >= 0 && Finite.Positive(length) && length >= 2 * step ? (number / rows * step) + step : null;

    /// <summary>Distance across of the place on a grid that a random number names.</summary>
    /// <param name="number">N, 1: random number.</param>
    /// <param name="width">W, m: width.</param>
    /// <param name="step">d, m: step of the grid and distance from the edges.</param>
    /// <returns>y, m; null outside the range.</returns>
    [Formula("y", "y = (N mod k) · d + d, k = W/d − 1", "UFC 3-250-03, 15 May 2001 (read)", "as along; otherwise no result")]
    public static double? GridAcross(int number, double width, double step) => Across(width, step) is { } rows && number >= 0 ? (number % rows * step) + step : null;

    /// <summary>Random place along a sublot.</summary>
    /// <param name="start">x0, m: where the sublot begins.</param>
    /// <param name="length">L, m: its length.</param>
    /// <param name="random">r, 1: random number.</param>
    /// <returns>x, m; null outside the range.</returns>
    [Formula("x", "x = x0 + r · L", "ASTM D3665, stratified random sampling (scope and notes read); the sum derived", "L not below zero, r from 0 to 1; otherwise no result")]
    public static double? RandomAlong(double start, double length, double random) => Finite.NotNegative(length) && random is >= 0 and <= 1 && double.IsFinite(start) ? start + (random * length) : null;

    /// <summary>Random place across a sublot.</summary>
    /// <param name="width">W, m: width.</param>
    /// <param name="margin">e, m: distance that is kept from each edge.</param>
    /// <param name="random">r, 1: random number.</param>
    /// <returns>y, m; null outside the range.</returns>
    [Formula("y", "y = e + r · (W − 2 · e)", "ASTM D3665, stratified random sampling (scope and notes read); the sum derived", "W at least 2 e, e not below zero, r from 0 to 1; otherwise no result")]
    public static double? RandomAcross(double width, double margin, double random) => Finite.NotNegative(margin) && width >= 2 * margin && random is >= 0 and <= 1 ? margin + (random * (width - (2 * margin))) : null;

    /// <summary>Loads of one of several equal sublots.</summary>
    /// <param name="lot">M, kg: mass of the lot.</param>
    /// <param name="sublots">n, 1: sublots.</param>
    /// <param name="payload">P, kg: mass of a load.</param>
    /// <returns>N, 1; null outside the range.</returns>
    [Formula("N", "N = M / (n · P)", Sources.Definition, "M not below zero, n and P above zero; otherwise no result")]
    public static double? LoadsOfSublot(double lot, int sublots, double payload) => Finite.NotNegative(lot) && sublots > 0 && Finite.Positive(payload) ? lot / (sublots * payload) : null;

    private static int? Across(double width, double step) => Finite.Positive(step) && width >= 2 * step ? (int)Math.Round(width / step) - 1 : null;
}
