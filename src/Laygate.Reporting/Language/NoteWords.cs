using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Words remarks.</summary>
public static class NoteWords
{
    /// <summary>The sentence of a remark; an id without a sentence is made readable with its arguments, so that nothing is lost.</summary>
    public static string Of(Note note) => Glued(note).Replace(PlainText.Glue, ' ');

    /// <summary>Whether a remark asks the plan to say something on which it depends whether a rule applies.</summary>
    internal static bool Asks(Note note) => note.Id is FindingNotes.SayWhether or FindingNotes.SayWhat;

    /// <summary>The same sentence with numbers glued to their units.</summary>
    internal static string Glued(Note note) => NoteTable.Sentences.TryGetValue(note.Id, out var sentence)
        ? Fill(sentence, note.Arguments)
        : Fallback(note);

    /// <summary>An argument as text: its words, or its number with unit.</summary>
    private static string Argument(NoteArgument argument) => argument switch
    {
        { Number: { } number } => Figures.WithUnit(Rounding.Text(number, RoundingKind.General, 0), argument.Unit ?? string.Empty),
        { Text: null or "" } => "none",
        { Name: "keys" } => string.Join(", ", argument.Text.Split(", ").Select(Key)),
        { Name: "quantity" } => Names.OfQuantity(argument.Text),
        _ => PlainText.Show(argument.Text),
    };

    // An address and a key, as findings name what is missing.
    private static string Key(string text) => text.Split('/', 2) is [var address, var key] ? $"`{Names.Of(new InputReference(address, key))}`" : $"`{PlainText.Show(text)}`";

    // In one walk, so that braces inside an argument stay what they are. {*} stands for all arguments that the sentence does not name.
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
            text.Append(name is "*" ? List(arguments.Where(argument => !sentence.Contains($"{{{argument.Name}}}", StringComparison.Ordinal))) : Named(arguments, name));
            at = close + 1;
        }

        return text.Append(sentence, at, sentence.Length - at).ToString();
    }

    private static string Fallback(Note note)
    {
        var name = Names.Capital(PlainText.Show(note.Id).Replace('-', ' '));
        return note.Arguments.Count == 0
            ? name + "."
            : $"{name}: {List(note.Arguments)}.";
    }

    private static string Named(IReadOnlyList<NoteArgument> arguments, string name) =>
        arguments.FirstOrDefault(argument => string.Equals(argument.Name, name, StringComparison.Ordinal)) is { } found ? Argument(found) : "(not given)";

    private static string List(IEnumerable<NoteArgument> arguments) => string.Join(
        ", ", arguments.Select(argument => $"{PlainText.Show(argument.Name).Replace('_', ' ').Replace('.', ' ')} {Argument(argument)}"));
}
