using System.Buffers;
using System.Globalization;
using System.Text;

namespace Laygate.Reading.Yaml;

/// <summary>Says where bytes are no UTF-8 and what they probably are.</summary>
internal static class EncodingProblems
{
    private const int Most = 10;
    private const string SaveAsUtf8 = "Save the file in the encoding UTF-8.";

    /// <summary>The first places that are no UTF-8, at most ten.</summary>
    public static List<ReadingProblem> Find(ReadOnlySpan<byte> bytes)
    {
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            return [new ReadingProblem("The file is saved as UTF-16.", TextSpan.FileStart, SaveAsUtf8)];
        }

        var problems = new List<ReadingProblem>();
        int line = 1, column = 1;
        while (!bytes.IsEmpty && problems.Count < Most)
        {
            var valid = Rune.DecodeFromUtf8(bytes, out var rune, out var length) == OperationStatus.Done;
            if (!valid)
            {
                problems.Add(Invalid(bytes[0], new TextSpan(line, column, line, column + 1)));
            }

            (line, column) = valid && rune.Value == '\n' ? (line + 1, 1) : (line, column + (valid ? rune.Utf16SequenceLength : 1));
            bytes = bytes[length..];
        }

        return problems;
    }

    private static ReadingProblem Invalid(byte value, TextSpan at)
    {
        // From 0xA0 on, Latin-1 and Windows-1252 agree; a degree sign is what hot-mix plans stumble over.
        var guess = value >= 0xA0 ? $"; in the older encoding Windows-1252 it would be `{(char)value}`" : string.Empty;
        return new ReadingProblem(
            string.Create(CultureInfo.InvariantCulture, $"The byte 0x{value:X2} is not UTF-8 text{guess}."), at, SaveAsUtf8);
    }
}
