using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>
/// Converts the values of one group of keys, each by its raw text and never by what YAML takes it for. The schema has decided
/// on the shape before: here only what no pattern can say is a problem, such as a unit of another dimension or a day that the
/// calendar lacks. What has another shape reads as absent, and there is no plan then.
/// </summary>
internal sealed class Fields(MapToken map, string path, MappingContext context)
{
    /// <summary>The text of a key, exactly as written.</summary>
    public string? Text(string key) => Scalar(key)?.Text;

    /// <summary>The id behind a key.</summary>
    public string? Id(string key) => Scalar(key) is { } scalar ? IdOf(scalar) : null;

    /// <summary>The id behind a key that must be there.</summary>
    public string RequiredId(string key) => Id(key) ?? Misshapen(string.Empty);

    /// <summary>A flag, yes or no.</summary>
    public bool? Flag(string key) => Scalar(key)?.Text switch
    {
        null => null,
        "yes" => true,
        "no" => false,
        _ => Misshapen<bool?>(null),
    };

    /// <summary>A word of a closed list.</summary>
    public T? Word<T>(string key)
        where T : struct, Enum => Scalar(key) is { } scalar ? WordOf<T>(scalar) : null;

    /// <summary>A word of a closed list that must be there.</summary>
    public T RequiredWord<T>(string key)
        where T : struct, Enum => Word<T>(key) ?? Misshapen(default(T));

    /// <summary>A whole number, written in plain digits.</summary>
    public int? Count(string key)
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        if (scalar.Kind == ScalarKind.WholeNumber && int.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        var advice = scalar.Style == ScalarStyle.Plain ? "Write plain digits, without a unit, point or exponent." : "Write plain digits, without quotation marks.";
        return Refuse<int>(scalar, $"{Name(key)} needs a whole number, not {TokenNames.Of(scalar)}.", advice);
    }

    /// <summary>A whole number that must be there.</summary>
    public int RequiredCount(string key) => Count(key) ?? Misshapen(0);

    /// <summary>A date.</summary>
    public DateOnly? Date(string key) => Converted(key, "a date such as `2031-06-12`", ScalarTexts.Date, TimeAdvice.Date);

    /// <summary>A time of day.</summary>
    public TimeOnly? Time(string key) => Converted(key, "a time of day such as `20:45`", ScalarTexts.Time, TimeAdvice.Time);

    /// <summary>An offset from UTC.</summary>
    public TimeSpan? Zone(string key) => Converted(key, "an offset from UTC such as `+02:00`", ScalarTexts.Zone, TimeAdvice.Zone);

    /// <summary>A date with a time of day, and perhaps an offset from UTC.</summary>
    public Moment? Moment(string key)
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        if (ScalarTexts.Moment(scalar.Text) is { } moment)
        {
            return moment;
        }

        Refuse<int>(scalar, $"{Name(key)} needs a date and time such as `2031-06-12T20:45`, not {TokenNames.Of(scalar)}.", TimeAdvice.Moment(scalar.Text));
        return null;
    }

    /// <summary>A date with a time of day that must be there.</summary>
    public Moment RequiredMoment(string key) => Moment(key) ?? Misshapen(new Moment(default, null));

    /// <summary>A number with a unit.</summary>
    public Measure<T>? Measure<T>(string key)
        where T : IDimension
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        var measure = MeasureReader.Read<T>(scalar.Text, out var problem);
        if (problem is not null)
        {
            Refuse<int>(scalar, $"{Name(key)}: {problem.Message}", problem.Hint);
        }

        return measure;
    }

    /// <summary>A number with a unit that must be there.</summary>
    public Measure<T> RequiredMeasure<T>(string key)
        where T : IDimension => Measure<T>(key) ?? Misshapen(new Measure<T>(0, UnitTable.Of(T.Of).First()));

    /// <summary>A measure of either of two dimensions: a mass or a volume per area.</summary>
    public IMeasure? Either<TFirst, TSecond>(string key)
        where TFirst : IDimension
        where TSecond : IDimension
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        if (MeasureReader.Read<TFirst>(scalar.Text, out var problem) is { } first)
        {
            return first;
        }

        if (MeasureReader.Read<TSecond>(scalar.Text, out _) is { } second)
        {
            return second;
        }

        Refuse<int>(scalar, $"{Name(key)}: {problem!.Message}", problem.Hint);
        return null;
    }

    /// <summary>The designation of a sieve.</summary>
    public Sieve RequiredSieve(string key) => Sieve.Find(Text(key) ?? string.Empty) ?? Misshapen(new Sieve(string.Empty, 0, null));

    /// <summary>A group of keys.</summary>
    public T? Block<T>(string key, Func<Fields, T> read)
        where T : class => Find(key) switch
        {
            null => null,
            MapToken block => read(new Fields(block, Inside(key), context)),
            _ => Misshapen<T?>(null),
        };

    /// <summary>A group of keys that must be there.</summary>
    public T RequiredBlock<T>(string key, Func<Fields, T> read)
        where T : class => Block(key, read) ?? Misshapen(read(new Fields(new MapToken([], map.Span), Inside(key), context)));

    /// <summary>A list of groups of keys; empty when the key is not there.</summary>
    public IReadOnlyList<T> List<T>(string key, Func<Fields, T> read)
        where T : class => Items(key, item => item is MapToken entry ? read(new Fields(entry, $"{Inside(key)}[]", context)) : Misshapen<T?>(null));

    /// <summary>A list of ids; empty when the key is not there.</summary>
    public IReadOnlyList<string> Ids(string key) => Items(key, item => item is ScalarToken scalar ? IdOf(scalar) : Misshapen<string?>(null));

    /// <summary>A list of words of a closed list; empty when the key is not there.</summary>
    public IReadOnlyList<T> WordList<T>(string key)
        where T : struct, Enum => [.. Items(key, item => item is ScalarToken scalar ? (object?)WordOf<T>(scalar) : Misshapen<object?>(null)).OfType<T>()];

    private IReadOnlyList<T> Items<T>(string key, Func<YamlToken, T?> read)
        where T : class => Find(key) switch
        {
            null => [],
            ListToken list => [.. list.Items.Select(read).OfType<T>()],
            _ => Misshapen<IReadOnlyList<T>>([]),
        };

    private ScalarToken? Scalar(string key) => Find(key) switch
    {
        null => null,
        ScalarToken { IsNull: false } scalar => scalar,
        _ => Misshapen<ScalarToken?>(null),
    };

    private YamlToken? Find(string key)
    {
        context.KeysRead?.Add(Inside(key));
        return map.Find(key)?.Value;
    }

    private T? WordOf<T>(ScalarToken scalar)
        where T : struct, Enum => Words.Find<T>(scalar.Text) ?? Misshapen<T?>(null);

    private string? IdOf(ScalarToken scalar) => ScalarTexts.IsId(scalar.Text) ? scalar.Text : Misshapen<string?>(null);

    private T? Converted<T>(string key, string needed, Func<string, T?> convert, Func<string, string?> advise)
        where T : struct
    {
        if (Scalar(key) is not { } scalar)
        {
            return null;
        }

        return convert(scalar.Text) ?? Refuse<T>(scalar, $"{Name(key)} needs {needed}, not {TokenNames.Of(scalar)}.", advise(scalar.Text));
    }

    private T? Refuse<T>(ScalarToken scalar, string message, string? hint)
        where T : struct
    {
        context.Problems.Add(new ReadingProblem(message, scalar.Span, hint));
        return null;
    }

    // A value that was refused for its text is absent as well; the shape is no problem of its own then.
    private T Misshapen<T>(T instead)
    {
        context.IsMisshapen = true;
        return instead;
    }

    private static string Name(string key) => $"`{key}`";

    private string Inside(string key) => path.Length == 0 ? key : $"{path}.{key}";
}
