using System.Globalization;
using Laygate.Model.Measures;

namespace Laygate.Engineering.Quantities;

/// <summary>
/// One computation under way: gathers inputs with all that are missing, then steps, and ends in an answer that shows its working.
/// A missing input reads as NaN; <see cref="Stopped"/> says why the computation cannot go on.
/// </summary>
internal sealed class Calculation(QuantityContext context)
{
    private const double AbsoluteZeroBelowCelsius = 273.15;
    private const int Few = 32;

    private readonly List<WorkingInput> inputs = [];
    private readonly List<WorkingStep> steps = [];
    private readonly List<AssumptionUse> assumptions = [];
    private readonly List<InputReference> missing = [];
    private readonly List<InputReference> stated = [];
    private readonly Dictionary<Dimension, double> scales = [];
    private HashSet<WorkingInput>? known;
    private Answer? blocked;
    private Note? partial;

    /// <summary>The context.</summary>
    public QuantityContext Context => context;

    /// <summary>Temperatures below the surface that is laid upon, where a cooling mat was read; shown with the weather.</summary>
    public Mat.MatBase? Below { get; set; }

    /// <summary>The answer that ends the computation early, or null when all inputs are there.</summary>
    public Answer? Stopped => missing.Count > 0 ? Answer.Missing([.. missing.Distinct()]) : blocked;

    /// <summary>Another quantity, in SI.</summary>
    public double Quantity(string symbol, string name, Element? element)
    {
        if (element is null)
        {
            return double.NaN;
        }

        var answer = context.Get(name, element);
        if (answer.Value is not NumberValue number)
        {
            Take(answer);
            return double.NaN;
        }

        partial ??= answer.Partial;

        var definition = context.Catalogue.Find(name);
        var unit = answer.Unit ?? (definition is null ? null : context.UnitOf(definition));
        Add(symbol, name, element.Address, number.Si, unit);
        if (answer is { Origin: Origin.Stated, Input: { } input })
        {
            stated.Add(input);
        }

        Reach(unit, number.Scale);
        foreach (var use in answer.Working.Assumptions)
        {
            Use(use);
        }

        return number.Si;
    }

    /// <summary>A stated measure, in SI; missing under its key when it is not stated.</summary>
    public double Stated(string symbol, IMeasure? measure, string address, string key)
    {
        if (measure is null)
        {
            Miss(address, key);
            return double.NaN;
        }

        stated.Add(new InputReference(address, key));
        Add(symbol, key, address, measure.Si, measure.Unit);
        return measure.Si;
    }

    /// <summary>A stated count; missing under its key when it is not stated.</summary>
    public int Stated(string symbol, int? count, string address, string key)
    {
        if (count is null)
        {
            Miss(address, key);
            return 0;
        }

        stated.Add(new InputReference(address, key));
        Add(symbol, key, address, count.Value, null);
        return count.Value;
    }

    /// <summary>A stated measure, or the assumption that stands in for it.</summary>
    public double StatedOr(string assumption, string symbol, IMeasure? measure, string address, string key) => measure is null
        ? Assumed(assumption, symbol, address, new InputReference(address, key))
        : Stated(symbol, measure, address, key);

    /// <summary>An assumption, in SI.</summary>
    /// <param name="id">Id of the assumption.</param>
    /// <param name="symbol">Symbol in the formula.</param>
    /// <param name="address">Element for which it is used.</param>
    /// <param name="standsFor">The plan input in whose place it stands; null for what no plan states.</param>
    /// <param name="couldBe">A key that would replace it although nothing is missing.</param>
    public double Assumed(string id, string symbol, string address, InputReference? standsFor, InputReference? couldBe = null)
    {
        var assumption = context.Assumptions[id];
        Use(new AssumptionUse(id, address, assumption.Number, assumption.Unit, assumption.Evidence, assumption.Source, standsFor) { CouldBe = couldBe });
        AddNew(new WorkingInput(symbol, id, address, assumption.Number, assumption.Unit));
        var unit = UnitTable.Find(assumption.Unit);
        var si = unit?.ToSi(assumption.Number) ?? assumption.Number;
        Reach(unit, si);
        return si;
    }

    /// <summary>Shows an input that is already known, in SI.</summary>
    public void Show(string symbol, string name, string address, double si, Unit? unit) => Add(symbol, name, address, si, unit);

    /// <summary>Shows an input that is a word.</summary>
    public void Show(string symbol, string name, string address, string text) =>
        AddNew(new WorkingInput(symbol, name, address, null, string.Empty, text));

    /// <summary>Notes a missing input.</summary>
    public void Miss(string address, string key) => missing.Add(new InputReference(address, key));

    /// <summary>Notes all missing inputs of a list.</summary>
    public void Miss(IEnumerable<InputReference> references) => missing.AddRange(references);

    /// <summary>Takes over why another answer has no value, and its assumptions.</summary>
    public void Take(Answer answer)
    {
        if (answer.Absence is { } absence)
        {
            missing.AddRange(absence.Missing);
            blocked ??= absence.Missing.Count == 0 ? answer with { Input = null } : null;
        }

        foreach (var use in answer.Working.Assumptions)
        {
            Use(use);
        }
    }

    /// <summary>Notes that the result speaks for a part only.</summary>
    public void LeaveOut(Note? what) => partial ??= what;

    /// <summary>Stops for a reason other than a missing input.</summary>
    public void Block(AbsenceReason reason, Note note) => blocked ??= Answer.None(reason, note);

    /// <summary>Stops because stated numbers lie outside the range of a formula.</summary>
    /// <param name="quantity">Name of the quantity whose formula it is.</param>
    public void BlockOutside(string quantity) => blocked ??= Outside(quantity);

    /// <summary>The answer where the numbers lie outside the range of a formula: it names those that are stated, and the range.</summary>
    /// <param name="quantity">Name of the quantity whose formula it is.</param>
    public Answer Outside(string quantity) => Answer.None(
        AbsenceReason.OutsideRange,
        Note.Of(NoteIds.OutsideFormula, ("quantity", quantity), ("numbers", Numbers), ("range", context.Catalogue.Find(quantity)?.Range is { Length: > 0 } range ? range : "numbers of an ordinary size")),
        FirstStated);

    /// <summary>The numbers that went in and are no assumptions, for a reader who looks for the one that does not fit.</summary>
    public string Numbers => string.Join(", ", inputs.Where(input => input.Number is not null && context.Assumptions.Find(input.Quantity) is null)
        .Select(input => string.Create(CultureInfo.InvariantCulture, $"{input.Quantity[(input.Quantity.IndexOf('.', StringComparison.Ordinal) + 1)..].Replace('_', ' ')} {input.Number:G6} {input.Unit}").TrimEnd()).Distinct(StringComparer.Ordinal));

    /// <summary>Where the first stated number that went in stands; null where none did.</summary>
    public InputReference? FirstStated => stated.Count > 0 ? stated[0] : null;

    /// <summary>Adds the assumptions of a part that was computed elsewhere.</summary>
    public void Use(AssumptionUse use)
    {
        if (!assumptions.Contains(use))
        {
            assumptions.Add(use);
        }
    }

    /// <summary>Shows a step between; the number in SI.</summary>
    public void Step(string symbol, string expression, double si, string metric, string us)
    {
        var unit = UnitTable.Find(context.System == UnitSystem.UnitedStates ? us : metric);
        Reach(unit, si);
        steps.Add(new WorkingStep(symbol, expression, unit?.FromSi(si) ?? si, unit?.Spelling ?? string.Empty));
    }

    /// <summary>The answer: a number in SI, or why the formula gives none.</summary>
    /// <param name="quantity">Name of the quantity, whose unit the last step takes.</param>
    /// <param name="symbol">Symbol of the result.</param>
    /// <param name="expression">The formula in symbols.</param>
    /// <param name="si">Result in SI; null or not finite where the inputs do not go into the formula.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    public Answer Result(string quantity, string symbol, string expression, double? si, double? low = null, double? high = null)
    {
        if (Stopped is { } stopped)
        {
            return stopped;
        }

        if (si is not { } value || !double.IsFinite(value))
        {
            return Outside(quantity) with { Working = Shown() };
        }

        var definition = context.Catalogue.Find(quantity);
        var own = definition is null ? null : context.UnitOf(definition);
        var unit = Legible(own, value);
        var scale = scales.GetValueOrDefault(unit?.Dimension ?? Dimension.None);
        value = Settled(value, scale);
        steps.Add(new WorkingStep(symbol, expression, unit?.FromSi(value) ?? value, unit?.Spelling ?? string.Empty));
        return new()
        {
            Value = new NumberValue(value, low, high) { Scale = scale },
            Unit = ReferenceEquals(unit, own) ? null : unit,
            Origin = assumptions.Any(use => use.StandsFor is not null) ? Origin.Assumed : Origin.Computed,
            Place = definition?.Place,
            Partial = partial,
            Working = Shown(),
        };
    }

    // Nobody reads 10 185 minutes.
    private static Unit? Legible(Unit? unit, double si) => string.Equals(unit?.Spelling, "min", StringComparison.Ordinal) && Math.Abs(si) >= 36_000 ? UnitTable.Find("h") : unit;

    // What is left of equal figures is nothing, not a trillionth.
    private static double Settled(double value, double scale) => Math.Abs(value) <= NumberValue.RoundingOfScale * scale ? 0 : value;

    /// <summary>Counts a figure, in SI, that is not shown and yet goes into a sum or difference: the result is known no better.</summary>
    public void Reach(Unit? unit, double si)
    {
        var dimension = unit?.Dimension ?? Dimension.None;
        Widen(dimension, si);
        if (dimension == Dimension.Temperature)
        {
            Widen(Dimension.TemperatureDifference, si + AbsoluteZeroBelowCelsius);
        }
    }

    private void Widen(Dimension dimension, double si)
    {
        if (double.IsFinite(si))
        {
            scales[dimension] = Math.Max(scales.GetValueOrDefault(dimension), Math.Abs(si));
        }
    }

    // What is read twice is shown once. Few inputs are looked through; of many, a set knows those that were there.
    private void AddNew(WorkingInput input)
    {
        if (inputs.Count >= Few)
        {
            known ??= [.. inputs];
        }

        if (known?.Add(input) ?? !inputs.Contains(input))
        {
            inputs.Add(input);
        }
    }

    private Working Shown() => new([.. inputs], [.. steps], [.. assumptions]);

    private void Add(string symbol, string name, string address, double si, Unit? unit)
    {
        Reach(unit, si);
        AddNew(new WorkingInput(symbol, name, address, unit?.FromSi(si) ?? si, unit?.Spelling ?? string.Empty));
    }
}
