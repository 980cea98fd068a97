using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json.Nodes;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Supply.Simulation;
using Laygate.FuzzTests.Fuzzing.Targets;
using Laygate.Model.Measures;
using Laygate.Rules.Results;

namespace Laygate.FuzzTests.Metamorphic;

/// <summary>What must hold between the findings of a random plan and those of the same plan changed; collects what does not.</summary>
internal sealed class Properties
{
    /// <summary>A search for the worst moment on a coarse grid, and a number of six digits, may move a value by so much.</summary>
    private const double Allowed = 0.005;

    private static readonly string[] Windows = ["course.densification_window", "early-friction.grit_window"];
    private readonly ConcurrentDictionary<string, int> compared = new(StringComparer.Ordinal);
    private readonly ConcurrentBag<string> broken = [];
    private readonly ConcurrentDictionary<string, int> excepted = new(StringComparer.Ordinal);

    /// <summary>What does not hold.</summary>
    public IEnumerable<string> Broken => broken.Order(StringComparer.Ordinal);

    /// <summary>How many answers were compared, by property.</summary>
    public IEnumerable<KeyValuePair<string, int>> Compared => compared.OrderBy(one => one.Key, StringComparer.Ordinal);

    /// <summary>How often an exception was met.</summary>
    public IEnumerable<KeyValuePair<string, int>> Excepted => excepted.OrderBy(one => one.Key, StringComparer.Ordinal);

    /// <summary>Asks all of one plan.</summary>
    public void Ask(int number)
    {
        var (plan, result) = RandomPlan.Next(number);
        var random = new Random(number);
        var findings = Judgement.Findings(result);
        Same("units", number, findings, Judgement.Of(PlanChange.OtherUnits(plan, number, exactly: number % 2 == 0), number), text => text);
        Same("order", number, findings, Judgement.Of(PlanChange.OtherOrder(plan, random, path => Exceptions.Has("order", path)), number), text => text);
        Same("ids", number, findings, Judgement.Of(PlanChange.OtherIds(plan), number), PlanChange.WithOldIds);
        Culture(number, plan, result);
        Worse(number, plan, findings, PlanChange.WorseWeather(plan, 1 + random.Next(8), 1 + ((decimal)random.Next(1, 11) / 10)));
        Fewer(number, plan, findings, PlanChange.FewerTrucks(plan));
    }

    private void Same(string property, int number, Dictionary<(string Rule, string Address), Finding> before, FileResult result, Func<string, string> renamed)
    {
        if (result.Problems.Count > 0)
        {
            broken.Add($"{property}: plan {number} is refused: {result.Problems[0].Message}");
            return;
        }

        var after = result.Reports[0].Findings.ToDictionary(finding => (finding.Rule, renamed(finding.Address)));
        foreach (var key in before.Keys.Union(after.Keys))
        {
            Count(property);
            var (was, now) = (before.GetValueOrDefault(key), after.GetValueOrDefault(key));
            if (property == "units" && number % 2 != 0 && IsAtTheLimit(was, now))
            {
                Except(property, "at the limit itself");
            }
            else if (was is null || now is null || was.Outcome != now.Outcome || was.Status != now.Status || !IsAlike(was.Value, now.Value, renamed))
            {
                Note(property, number, was ?? now!, $"{Words(was)} becomes {Words(now)}");
            }
        }
    }

    private void Culture(int number, JsonNode plan, FileResult result)
    {
        Count("culture");
        var usual = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = Odd;
        try
        {
            var again = Judgement.Of(plan, number);
            if (!RoundTrips.Json("1", [result], []).AsSpan().SequenceEqual(RoundTrips.Json("1", [again], [])))
            {
                broken.Add($"culture: plan {number} gives other bytes");
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = usual;
        }
    }

    // What is missed in good weather is missed in bad, and no window grows.
    private void Worse(int number, JsonNode plan, Dictionary<(string Rule, string Address), Finding> before, JsonNode changed)
    {
        if (!NotBetter("weather", number, before, changed))
        {
            return;
        }

        var (good, bad) = (Judgement.Context(plan), Judgement.Context(changed));
        foreach (var quantity in Windows)
        {
            foreach (var element in good.Elements.Of(good.Catalogue.Find(quantity)!.Element))
            {
                if (good.Get(quantity, element).Value is NumberValue most && bad.Get(quantity, bad.Elements.Find(element.Address)!).Value is NumberValue window)
                {
                    Count("windows");
                    if (window.Si > most.Si + Math.Max(0.05, Allowed * most.Si))
                    {
                        broken.Add(string.Create(CultureInfo.InvariantCulture, $"windows: plan {number}, {quantity} of {element.Address} grows from {most.Si:F1} to {window.Si:F1} s"));
                    }
                }
            }
        }
    }

    private void Fewer(int number, JsonNode plan, Dictionary<(string Rule, string Address), Finding> before, JsonNode changed)
    {
        if (JsonNode.DeepEquals(plan, changed) || !NotBetter("trucks", number, before, changed))
        {
            return;
        }

        if (Metres(plan) is { } more && Metres(changed) is { } fewer)
        {
            Count("metres");
            if (fewer > more + 0.5)
            {
                broken.Add(string.Create(CultureInfo.InvariantCulture, $"metres: plan {number} lays {more:F1} m, and {fewer:F1} m with fewer trucks"));
            }
        }
    }

    private static double? Metres(JsonNode plan) => ShiftSimulation.Of(Judgement.Context(plan)).Steady is { Count: > 0 } trains ? trains.Sum(train => train.Outcome.Metres) : null;

    /// <returns>Whether the changed plan can be read: air below its dew point, or a fleet that something else names, cannot.</returns>
    private bool NotBetter(string property, int number, Dictionary<(string Rule, string Address), Finding> before, JsonNode changed)
    {
        var result = Judgement.Of(changed, number);
        if (result.Problems.Count > 0)
        {
            Count(property + ", refused");
            return false;
        }

        var after = Judgement.Findings(result);
        foreach (var (key, was) in before.Where(finding => finding.Value.Outcome == Outcome.Missed))
        {
            Count(property);
            if (after.TryGetValue(key, out var now) && now.Outcome is Outcome.Met or Outcome.NotApplicable)
            {
                Note(property, number, was, $"{Words(was)} becomes {Words(now)}");
            }
        }

        return true;
    }

    private void Note(string property, int number, Finding finding, string what)
    {
        var exception = new[] { finding.Quantity, finding.Rule }.FirstOrDefault(name => Exceptions.Has(property, name));
        if (exception is not null)
        {
            Except(property, exception);
        }
        else
        {
            broken.Add($"{property}: plan {number}, {finding.Rule} ({finding.Quantity}) at {finding.Address}: {what}");
        }
    }

    private void Except(string property, string exception) => excepted.AddOrUpdate($"{property}, {exception}", 1, (_, count) => count + 1);

    // Six digits behind the point do not hold 20 min as hours: a value that stands on its limit to a millionth may fall to either side.
    private static bool IsAtTheLimit(Finding? was, Finding? now) => was is not null && now is not null && was.Outcome != now.Outcome
        && (now.Value ?? was.Value) is { Number: { } number } value
        && new[] { was.Limit, was.OtherLimit, now.Limit, now.OtherLimit }.OfType<ShownLimit>().SelectMany(limit => new[] { limit.Low, limit.High })
            .Any(end => end?.Number is { } limit && Math.Abs(Si(value.Unit, number) - Si(end.Unit, limit)) <= Math.Max(2e-6 * Math.Abs(Si(end.Unit, limit)), 1e-7));

    private void Count(string property) => compared.AddOrUpdate(property, 1, (_, count) => count + 1);

    private static string Words(Finding? finding) => finding is null ? "nothing"
        : string.Create(CultureInfo.InvariantCulture, $"{finding.Outcome} {finding.Status} {finding.Value?.Number} {finding.Value?.Unit} {finding.Value?.Text}");

    private static bool IsAlike(ShownValue? one, ShownValue? other, Func<string, string> renamed)
    {
        if (one is null || other is null)
        {
            return one is null && other is null;
        }

        return one.Place == other.Place && renamed(one.Text ?? string.Empty) == renamed(other.Text ?? string.Empty)
            && IsAlike(one, one.Number, other, other.Number) && IsAlike(one, one.Low, other, other.Low) && IsAlike(one, one.High, other, other.High);
    }

    private static bool IsAlike(ShownValue one, double? number, ShownValue other, double? same)
    {
        if (number is null || same is null)
        {
            return number is null && same is null;
        }

        var (si, again) = (Si(one.Unit, number.Value), Si(other.Unit, same.Value));
        return Math.Abs(si - again) <= Math.Max(1e-6, Allowed * Math.Abs(si));
    }

    private static double Si(string unit, double number) => UnitTable.Find(unit) is { } known ? known.ToSi(number) : number;

    /// <summary>A culture that no text of the program may follow.</summary>
    private static CultureInfo Odd { get; } = MakeOdd();

    private static CultureInfo MakeOdd()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator, culture.NumberFormat.NegativeSign, culture.NumberFormat.PositiveSign) = (",", ".", "\u2212", "plus ");
        (culture.NumberFormat.PercentDecimalSeparator, culture.NumberFormat.CurrencyDecimalSeparator, culture.NumberFormat.NaNSymbol) = (",", ",", "keine Zahl");
        (culture.DateTimeFormat.DateSeparator, culture.DateTimeFormat.TimeSeparator, culture.DateTimeFormat.ShortDatePattern, culture.DateTimeFormat.ShortTimePattern) = (".", ".", "dd.MM.yyyy", "HH.mm");
        return culture;
    }
}
