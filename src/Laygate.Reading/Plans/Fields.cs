using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>
/// Reads the values of one group of keys, each by its raw text and never by what YAML takes it for.
/// A value that is wrong is a problem and reads as absent; so is a group in which nothing can be read.
/// </summary>
internal sealed class Fields(MapToken map, TextSpan anchor, string path, MappingContext context)
{
    /// <summary>The text of a key, exactly as written.</summary>
    public string? Text(string key) => Scalar(key, "a text")?.Text;

    /// <summary>The id behind a key.</summary>
    public string? Id(string key) => Scalar(key, "an id") is { } scalar ? CheckedId(scalar) : null;

    /// <summary>The id behind a key that must be there.</summary>
    public string RequiredId(string key) => Id(key) ?? Missing(key, string.Empty);

    /// <summary>A flag, yes or no.</summary>
    public bool? Flag(string key)
    {
        if (Scalar(key, "yes or no") is not { } scalar) return null;
        if (scalar.Text is "yes" or "no") return scalar.Text is "yes";
        return Refuse<bool>(scalar, $"{Name(key)} needs `yes` or `no`, not {TokenNames.Of(scalar)}.", YesOrNo(scalar.Text));
    }

    /// <summary>A word of a closed list.</summary>
    public T? Word<T>(string key)
        where T : struct, Enum
    {
        if (Scalar(key, "a word") is not { } scalar) return null;
        return Words.Find<T>(scalar.Text) ?? Refuse<T>(scalar, $"{Name(key)} cannot be {TokenNames.Quote(scalar.Text)}.", Choice(scalar.Text, Words.Of<T>()));
    }

    /// <summary>A word of a closed list that must be there.</summary>
    public T RequiredWord<T>(string key)
        where T : struct, Enum => Word<T>(key) ?? Missing(key, default(T));

    /// <summary>A whole number.</summary>
    public int? Count(string key)
    {
        if (Scalar(key, "a whole number") is not { } scalar) return null;
        if (scalar.Kind == ScalarKind.WholeNumber && int.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)) return number;
        var advice = scalar.Style == ScalarStyle.Plain ? "Write plain digits, without a unit, point or exponent." : "Write plain digits, without quotation marks.";
        return Refuse<int>(scalar, $"{Name(key)} needs a whole number, not {TokenNames.Of(scalar)}.", advice);
    }

    /// <summary>A whole number that must be there.</summary>
    public int RequiredCount(string key) => Count(key) ?? Missing(key, 0);

    /// <summary>A date.</summary>
    public DateOnly? Date(string key) => Converted(key, "a date such as `2031-06-12`", ScalarTexts.Date, TimeAdvice.Date);

    /// <summary>A time of day.</summary>
    public TimeOnly? Time(string key) => Converted(key, "a time of day such as `20:45`", ScalarTexts.Time, TimeAdvice.Time);

    /// <summary>An offset from UTC.</summary>
    public TimeSpan? Zone(string key) => Converted(key, "an offset from UTC such as `+02:00`", ScalarTexts.Zone, TimeAdvice.Zone);

    /// <summary>A date with a time of day, and perhaps an offset from UTC.</summary>
    public Moment? Moment(string key)
    {
        if (Scalar(key, "a date and time") is not { } scalar) return null;
        var moment = ScalarTexts.Moment(scalar.Text);
        if (moment is null) RefuseValue(scalar, $"{Name(key)} needs a date and time such as `2031-06-12T20:45`, not {TokenNames.Of(scalar)}.", TimeAdvice.Moment(scalar.Text));
        return moment;
    }

    /// <summary>A date with a time of day that must be there.</summary>
    public Moment RequiredMoment(string key) => Moment(key) ?? Missing(key, new Moment(default, null));

    /// <summary>A number with a unit.</summary>
    public Measure<T>? Measure<T>(string key)
        where T : IDimension
    {
        if (Scalar(key, "a number and a unit") is not { } scalar) return null;
        var measure = MeasureReader.Read<T>(scalar.Text, out var problem);
        if (problem is not null) RefuseValue(scalar, $"{Name(key)}: {problem.Message}", problem.Hint);
        return measure;
    }

    /// <summary>A number with a unit that must be there.</summary>
    public Measure<T> RequiredMeasure<T>(string key)
        where T : IDimension => Measure<T>(key) ?? Missing(key, Nothing<T>());

    /// <summary>A measure of either of two dimensions: a mass or a volume per area.</summary>
    public IMeasure? Either<TFirst, TSecond>(string key)
        where TFirst : IDimension
        where TSecond : IDimension
    {
        if (Scalar(key, "a number and a unit") is not { } scalar) return null;
        if (MeasureReader.Read<TFirst>(scalar.Text, out var problem) is { } first) return first;
        if (MeasureReader.Read<TSecond>(scalar.Text, out _) is { } second) return second;
        RefuseValue(scalar, $"{Name(key)}: {problem!.Message}", problem.Hint);
        return null;
    }

    /// <summary>The designation of a sieve.</summary>
    public Sieve RequiredSieve(string key)
    {
        if (Scalar(key, "the name of a sieve") is not { } scalar) return Missing(key, new Sieve(string.Empty, 0, null));
        if (Sieve.Find(scalar.Text) is { } sieve) return sieve;
        Refuse<int>(scalar, $"{TokenNames.Quote(scalar.Text)} is not a sieve that is known.", Known([.. Sieve.Names.Order(StringComparer.Ordinal)]));
        return new Sieve(string.Empty, 0, null);
    }

    /// <summary>A group of keys.</summary>
    public T? Block<T>(string key, Func<Fields, T> read)
        where T : class
    {
        Note(key);
        if (map.Find(key) is not { } entry) return null;
        if (entry.Value is MapToken block) return read(new Fields(block, entry.Key.Span, Inside(key), context));
        context.Problems.Add(new ReadingProblem($"{Name(key)} needs a group of keys, not {TokenNames.Of(entry.Value)}.", entry.Key.Span));
        return null;
    }

    /// <summary>A group of keys that must be there.</summary>
    public T RequiredBlock<T>(string key, Func<Fields, T> read)
        where T : class => Block(key, read) ?? Missing(key, read(new Fields(new MapToken([], anchor), anchor, Inside(key), new MappingContext())));

    /// <summary>A list of groups of keys; empty when the key is not there.</summary>
    public IReadOnlyList<T> List<T>(string key, Func<Fields, T> read) =>
        [.. Items(key).Select(item => Entry(key, item)).OfType<Fields>().Select(read)];

    /// <summary>A list of ids; empty when the key is not there.</summary>
    public IReadOnlyList<string> Ids(string key) =>
        [.. Items(key).Select(item => item is ScalarToken scalar ? CheckedId(scalar) : RefuseItem(key, item, "an id")).OfType<string>()];

    /// <summary>A list of words of a closed list; empty when the key is not there.</summary>
    public IReadOnlyList<T> WordList<T>(string key)
        where T : struct, Enum => [.. Items(key).Select(item => WordOf<T>(key, item)).OfType<T>()];

    private T? WordOf<T>(string key, YamlToken item)
        where T : struct, Enum
    {
        if (item is ScalarToken scalar)
        {
            return Words.Find<T>(scalar.Text) ?? Refuse<T>(scalar, $"{Name(key)} cannot hold {TokenNames.Quote(scalar.Text)}.", Choice(scalar.Text, Words.Of<T>()));
        }

        RefuseItem(key, item, "a word");
        return null;
    }

    /// <summary>Reports a key that must be there, unless its value was already refused.</summary>
    private T Missing<T>(string key, T instead)
    {
        if (map.Find(key) is null) context.Problems.Add(new ReadingProblem($"The key `{key}` is missing here.", anchor, $"Add `{key}:`."));
        return instead;
    }

    private static Measure<T> Nothing<T>()
        where T : IDimension => new(0, UnitTable.Of(T.Of).First());

    private IReadOnlyList<YamlToken> Items(string key)
    {
        Note(key);
        if (map.Find(key) is not { } entry) return [];
        if (entry.Value is ListToken list) return list.Items;
        context.Problems.Add(new ReadingProblem($"{Name(key)} needs a list, not {TokenNames.Of(entry.Value)}.", entry.Key.Span));
        return [];
    }

    private Fields? Entry(string key, YamlToken item)
    {
        if (item is MapToken entry) return new Fields(entry, TokenNames.Head(item).Span, $"{Inside(key)}[]", context);
        RefuseItem(key, item, "a group of keys");
        return null;
    }

    private string? RefuseItem(string key, YamlToken item, string needed)
    {
        context.Problems.Add(new ReadingProblem($"An entry of {Name(key)} needs {needed}, not {TokenNames.Of(item)}.", TokenNames.Head(item).Span));
        return null;
    }

    private ScalarToken? Scalar(string key, string needed)
    {
        Note(key);
        if (map.Find(key) is not { } entry) return null;
        if (entry.Value is ScalarToken { IsNull: false } scalar) return scalar;
        context.Problems.Add(new ReadingProblem($"{Name(key)} needs {needed}, not {TokenNames.Of(entry.Value)}.", entry.Key.Span));
        return null;
    }

    private T? Converted<T>(string key, string needed, Func<string, T?> convert, Func<string, string?> advise)
        where T : struct
    {
        if (Scalar(key, needed) is not { } scalar) return null;
        var value = convert(scalar.Text);
        if (value is null) RefuseValue(scalar, $"{Name(key)} needs {needed}, not {TokenNames.Of(scalar)}.", advise(scalar.Text));
        return value;
    }

    private void RefuseValue(ScalarToken scalar, string message, string? hint) =>
        context.AddValue(new ReadingProblem(message, scalar.Span, hint));

    private string? CheckedId(ScalarToken scalar)
    {
        if (ScalarTexts.IsId(scalar.Text)) return scalar.Text;
        context.Problems.Add(new ReadingProblem($"{TokenNames.Quote(scalar.Text)} is not an id.", scalar.Span, "Write lower-case letters and digits, joined by single hyphens."));
        return null;
    }

    private T? Refuse<T>(ScalarToken scalar, string message, string? hint)
        where T : struct
    {
        context.Problems.Add(new ReadingProblem(message, scalar.Span, hint));
        return null;
    }

    private static string YesOrNo(string text) => text.ToUpperInvariant() switch
    {
        "YES" or "Y" or "TRUE" or "ON" => "Write `yes`.",
        "NO" or "N" or "FALSE" or "OFF" => "Write `no`.",
        _ => "Write `yes` or `no`, or leave the key out when it is not known.",
    };

    private static string Choice(string text, IReadOnlyList<string> known)
    {
        var near = NearestNames.Of(text, known);
        return near.Count > 0
            ? $"Did you mean {string.Join(" or ", near.Select(name => $"`{name}`"))}?"
            : Known(known);
    }

    private static string Known(IReadOnlyList<string> names) => $"Known are {string.Join(", ", names.Select(name => $"`{name}`"))}.";

    private static string Name(string key) => $"`{key}`";

    private string Inside(string key) => path.Length == 0 ? key : $"{path}.{key}";

    private void Note(string key) => context.KeysRead?.Add(Inside(key));
}
