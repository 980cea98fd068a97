using System.Globalization;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>What somebody might write in place of a value: by mistake, by machine, or to break the program.</summary>
internal static class Fragments
{
    private static readonly string[] Words =
    [
        "", "~", "null", "Null", "yes", "no", "Yes", "on", "off", "true", "TRUE", "none", "any", "unknown", "\"\"", "' '", "{}", "[]", "[[]]", "{a: b}", "[{}]", "- a", "? a", ": ",
        "0", "-0", "00", "007", "+1", "-1", "1.", ".5", "0.0000001", "1e3", "1E-400", "1e999", "0x1F", "0o17", "0b1", "1_000", "1,5", "1.234,5", "1 000", "1'000", "½", "٣", "１２", "−5",
        "9999999999", "99999999999", "2147483648", "-2147483649", "9223372036854775808", "79228162514264337593543950336", "0.1234567", "1/2", "1/0", "3 1/2",
        ".nan", "NaN", ".inf", "-.inf", "Infinity", "-∞", "40", "40mm", "40 mm", "40  mm", "40 MM", "40 µm", "40 ton", "40 °", "40 K", "-300 °C", "14000 °C", "9 F", "1.5 in", "1e3 mm", "0 m/min", "-4 m/min",
        "0 %", "-1 %", "101 %", "1000000 %", "0 mm", "9999999999 m", "9999999999 t/h", "0.000001 h", "9999999999 d", "9999999999 m/min", "0 t", "9999999999 kg/m3",
        "2027-02-30", "2027-13-01", "0000-00-00", "0001-01-01", "9999-12-31", "2027-06-23", "2027-6-3", "23.06.2027", "06/23/2027", "2027-06-23T25:00", "2027-06-23T24:00", "2027-06-23T00:00", "2027-06-23T10:00:00Z",
        "2027-06-23T10:00+14:59", "9999-12-31T23:59", "0001-01-01T00:00", "24:00", "23:59", "00:00", "7:5", "12:60", "\"-15:00\"", "+14:00", "1:30:00",
        "&a", "&a x", "*a", "*nowhere", "&a [*a]", "&a {b: *a}", "<<: *a", "!!str x", "!!python/object:os.system x", "!<tag:yaml.org,2002:binary> aGk=", "!x {a: b}", "%YAML 1.1", "--- x", "... ",
        "|\n  block\n  text", ">-\n  folded\n  text", "|+\n\n\n", "\"\\u0000\"", "\"\\ud83d\"", "\"\\UFFFFFFFF\"", "\"a\\nb\"", "\"unclosed", "'unclosed", "[unclosed", "{unclosed: ", "`back`", "@at", "# comment", "a # b", "a: b", "a:b", "key: [1, 2",
        "\u202Egnp.exe", "\u200B", "\u2066x\u2069", "\uFEFF", "a\u0301\u0301\u0301", "\u0085", "\u2028", "\t", "\u001B[31mred\u001B[0m", "\u0007", "\u007F", "\uFFFE", "\uD7FF", "\U0001F469\u200D\U0001F3ED", "\U0010FFFF", "ﷺ", "İ", "ẞ", "日本", "Ω",
        "<script>alert(1)</script>", "]]>", "&amp;", "../../etc/passwd", "/dev/zero", "C:\\x", "${HOME}", "`id`", "$(id)", "%00", "'; DROP TABLE x; --", "=1+1", "@SUM(1)", "{{7*7}}", "course:", "course:nowhere", ":", "run:1/joint:left", "value:all",
        "general", "us-wa", "de", "no-such-specification", "LAY-001", "LAY-999", "SAF-001", "at-least", "at-most", "between", "present", "agrees", "not-before", "requirement", "judgement", "read", "confirmed", "course.thickness", "mix.kind", "plan.sections", "shift.duration",
    ];

    /// <summary>A value; now and then one that is long, deep or multiplies.</summary>
    public static string Any(Random random) => random.Next(40) switch
    {
        0 => new string("ax \u00E9\u202E\""[random.Next(6)], 1 << random.Next(4, 17)),
        1 => Deep(random, '[', ']'),
        2 => Deep(random, '{', '}'),
        3 => Laughs(random.Next(2, 12)),
        4 => List(Words[random.Next(Words.Length)], 1 << random.Next(1, 14)),
        5 => Number(random),
        6 => "\"" + new string('\\', 2 * random.Next(1, 40)) + "\"",
        7 => random.NextInt64().ToString(CultureInfo.InvariantCulture),
        _ => Words[random.Next(Words.Length)],
    };

    /// <summary>A list of one value many times, in one line and no longer than a file may be.</summary>
    public static string List(string item, int count) =>
        $"[{string.Join(", ", Enumerable.Repeat(item.ReplaceLineEndings(" "), Math.Min(count, 1 + (400_000 / (item.Length + 2)))))}]";

    private static string Deep(Random random, char open, char close)
    {
        var depth = random.Next(4) == 0 ? 20_000 : random.Next(2, 140);
        var inner = open == '{' ? string.Concat(Enumerable.Repeat("{a: ", depth)) : new string(open, depth);
        return inner + "x" + (random.Next(5) == 0 ? string.Empty : new string(close, depth));
    }

    // Each list holds the one before nine times: the well-known way to make a small file large.
    private static string Laughs(int levels) =>
        $"[&l0 x, {string.Join(", ", Enumerable.Range(1, levels).Select(level => string.Create(CultureInfo.InvariantCulture, $"&l{level} [{string.Join(", ", Enumerable.Repeat(string.Create(CultureInfo.InvariantCulture, $"*l{level - 1}"), 9))}]")))}]";

    private static string Number(Random random) =>
        ((random.NextDouble() - 0.3) * Math.Pow(10, random.Next(-8, 14))).ToString("0.######", CultureInfo.InvariantCulture);
}
