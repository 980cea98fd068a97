using System.Collections.Frozen;

namespace Laygate.Checking.Verification;

/// <summary>One input of a formula of the manual.</summary>
/// <param name="Name">Key in the case file.</param>
/// <param name="Dimension">What it measures; null for a word.</param>
/// <param name="IsRequired">Whether it must be given.</param>
/// <param name="Words">Words allowed, where it is a word.</param>
/// <param name="IsList">Whether it is a list of such values.</param>
internal sealed record CaseInput(string Name, CaseDimension? Dimension, bool IsRequired = true, IReadOnlyList<string>? Words = null, bool IsList = false)
{
    /// <summary>An input that may be left out.</summary>
    public CaseInput Optional() => this with { IsRequired = false };

    /// <summary>A list of such values.</summary>
    public CaseInput Many() => this with { IsList = true };
}

/// <summary>The inputs of one computation: numbers and lists of them in SI units (temperatures in °C), and words.</summary>
internal sealed class CaseInputs(IReadOnlyDictionary<string, double> numbers, IReadOnlyDictionary<string, IReadOnlyList<double>> lists, IReadOnlyDictionary<string, string> words)
{
    /// <summary>A number that was given, or zero for an optional one that was not.</summary>
    public double this[string name] => numbers.GetValueOrDefault(name);

    /// <summary>A number that was given; null for an optional one that was not.</summary>
    public double? Given(string name) => numbers.TryGetValue(name, out var number) ? number : null;

    /// <summary>The values of a list.</summary>
    public IReadOnlyList<double> Many(string name) => lists[name];

    /// <summary>A whole number.</summary>
    public int Whole(string name) => (int)Math.Round(Math.Clamp(this[name], -1e9, 1e9));

    /// <summary>A word that was given.</summary>
    public string Word(string name) => words[name];

    /// <summary>A word that was given; null for an optional one that was not.</summary>
    public string? WordGiven(string name) => words.GetValueOrDefault(name);
}

/// <summary>A formula of the program that the manual may call.</summary>
/// <param name="Name">Name in case files.</param>
/// <param name="Result">What the result measures.</param>
/// <param name="Inputs">Inputs.</param>
/// <param name="Compute">The function of the program; the result in SI units, null outside its range.</param>
internal sealed record CaseFormula(string Name, CaseDimension Result, IReadOnlyList<CaseInput> Inputs, Func<CaseInputs, double?> Compute);

/// <summary>The one table that binds names in case files to functions of the program.</summary>
internal static class CaseFormulas
{
    /// <summary>All formulas in the order of the program.</summary>
    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        .. ProductionFormulas.All, .. QueueFormulas.All, .. WeatherFormulas.All, .. LedgerFormulasOfCases.All, .. BinderFormulasOfCases.All, .. AcceptanceFormulasOfCases.All,
        .. MixFormulasOfCases.All, .. ResultFormulas.All, .. TwoSetFormulas.All, .. SchemeFormulas.All,
    ];

    private static readonly FrozenDictionary<string, CaseFormula> ByName = All.ToFrozenDictionary(formula => formula.Name, StringComparer.Ordinal);

    /// <summary>All names.</summary>
    public static IEnumerable<string> Names => ByName.Keys;

    /// <summary>The formula of a name, or null.</summary>
    public static CaseFormula? Find(string name) => ByName.GetValueOrDefault(name);
}
