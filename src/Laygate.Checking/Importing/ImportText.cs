using System.Globalization;
using System.Text;
using Laygate.Checking.Scaffolding;
using Laygate.Reading.Imports;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;

namespace Laygate.Checking.Importing;

/// <summary>Writes what was imported as YAML that a person reads: hours as a section of a plan, trucks and plants as a file of parts. Name and hash of the original stay in it.</summary>
public static class ImportText
{
    private static readonly System.Buffers.SearchValues<char> Marks = System.Buffers.SearchValues.Create(",[]{}#:&*!|>'\"`@?\\");

    /// <summary>The text.</summary>
    /// <param name="import">What was imported, without problems.</param>
    public static string Write(Import import)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# Imported by Laygate from {Scalar(Path.GetFileName(import.File))}. The figures are those of that file; what it does not state is not here.\n");
        if (import.Kind is "weather")
        {
            Weather(text, import);
        }
        else
        {
            Parts(text, import);
        }

        return text.ToString();
    }

    private static void Weather(StringBuilder text, Import import)
    {
        text.Append("weather:\n");
        foreach (var value in import.Around)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {value.Key}: {Scalar(value.Text)}\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"  imported: {Original(import)}\n");
        if (import.Entries.All(entry => entry["base"] is null))
        {
            text.Append("  # Each hour needs the temperature of the surface that is laid upon, too: add `base`.\n");
        }

        text.Append("  hours:\n");
        foreach (var entry in import.Entries)
        {
            text.Append(CultureInfo.InvariantCulture, $"    - {{ {string.Join(", ", entry.Values.Select(value => $"{value.Key}: {Value(value)}"))} }}\n");
        }
    }

    private static void Parts(StringBuilder text, Import import)
    {
        text.Append(CultureInfo.InvariantCulture, $"parts: 1\n{import.Kind}:\n");
        foreach (var entry in import.Entries)
        {
            foreach (var (index, value) in entry.Values.Index())
            {
                text.Append(CultureInfo.InvariantCulture, $"  {(index == 0 ? "- " : "  ")}{value.Key}: {Value(value)}\n");
            }

            text.Append(CultureInfo.InvariantCulture, $"    imported: {Original(import)}\n");
        }
    }

    private static string Original(Import import) => $"{{ file: {Scalar(Path.GetFileName(import.File))}, sha256: {Scalar(import.Hash)} }}";

    private static string Value(ImportedValue value) => value.Ids.Count > 0 ? $"[{string.Join(", ", value.Ids.Select(Scalar))}]" : Scalar(value.Text);

    // Numbers with units, moments and plain digits stand as people write them; all else only where it cannot be taken for anything else.
    private static string Scalar(string text) =>
        text is "yes" or "no" || ScalarTexts.Moment(text) is not null || (MeasureText.Split(text) is not null && !text.AsSpan().ContainsAny(Marks)) || ImportTexts.IsPlainNumber(text)
            ? text
            : NewEntry.Scalar(text);
}
