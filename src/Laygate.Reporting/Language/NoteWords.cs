using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Language;

/// <summary>Words remarks.</summary>
public static class NoteWords
{
    /// <summary>The sentence of a remark; an id without a sentence is made readable with its arguments, so that nothing is lost.</summary>
    public static string Of(Note note) => NoteTable.Sentences.TryGetValue(note.Id, out var sentence)
        ? Fill(sentence, note.Arguments)
        : Fallback(note);

    /// <summary>An argument as text: its words, or its number with unit.</summary>
    internal static string Argument(NoteArgument argument) => argument.Number is { } number
        ? Figures.WithUnit(Rounding.Text(number, RoundingKind.General, 0), argument.Unit ?? string.Empty)
        : PlainText.Show(argument.Text ?? string.Empty);

    // Argument by argument in one walk, so that braces inside an argument stay what they are.
    private static string Fill(string sentence, IReadOnlyList<NoteArgument> arguments)
    {
        var text = new StringBuilder(sentence.Length + 32);
        var at = 0;
        while (at < sentence.Length)
        {
            var open = sentence.IndexOf('{', at);
            var close = open < 0 ? -1 : sentence.IndexOf('}', open);
            if (close < 0)
            {
                break;
            }

            text.Append(sentence, at, open - at);
            var name = sentence[(open + 1)..close];
            text.Append(arguments.FirstOrDefault(argument => string.Equals(argument.Name, name, StringComparison.Ordinal)) is { } found ? Argument(found) : "(not given)");
            at = close + 1;
        }

        return text.Append(sentence, at, sentence.Length - at).ToString();
    }

    private static string Fallback(Note note)
    {
        var name = Names.Capital(PlainText.Show(note.Id).Replace('-', ' '));
        return note.Arguments.Count == 0
            ? name + "."
            : $"{name}: {string.Join(", ", note.Arguments.Select(argument => $"{PlainText.Show(argument.Name).Replace('_', ' ')} {Argument(argument)}"))}.";
    }
}
