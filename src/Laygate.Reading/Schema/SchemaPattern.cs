using System.Text.RegularExpressions;

namespace Laygate.Reading.Schema;

/// <summary>
/// A regular expression of a schema. JSON Schema means the expressions of ECMA 262; where .NET differs, the expression is
/// translated or refused, so that editors and Laygate agree.
/// </summary>
internal sealed class SchemaPattern
{
    private Regex? _regex;

    /// <summary>Takes a pattern.</summary>
    /// <param name="source">The pattern as written.</param>
    /// <exception cref="SchemaException">It uses a construct whose meaning differs between regular expression engines.</exception>
    public SchemaPattern(string source)
    {
        Source = source;
        DotNet = Translate(source);
    }

    public string Source { get; }

    /// <summary>The same pattern for .NET: the end of the text is the very end, not before a last line feed.</summary>
    public string DotNet { get; }

    /// <summary>Whether a text matches, whatever the machine does meanwhile: the patterns are ours, and a test holds that none of them can go back far.</summary>
    public bool Matches(string text)
    {
        _regex ??= new Regex(DotNet, RegexOptions.None, Regex.InfiniteMatchTimeout);
        return _regex.IsMatch(text);
    }

    private static string Translate(string source)
    {
        var result = new System.Text.StringBuilder(source.Length + 4);
        var inClass = false;
        for (var at = 0; at < source.Length; at++)
        {
            var letter = source[at];
            if (letter == '\\')
            {
                var next = at + 1 < source.Length ? source[++at] : '\0';
                // \d, \w, \s match more than ASCII in .NET; \1 and the like backtrack without bound.
                if (char.IsAsciiLetterOrDigit(next) && next is not ('u' or 't' or 'n'))
                {
                    throw new SchemaException($"The pattern `{source}` uses `\\{next}`; write the characters out, such as [0-9].");
                }

                result.Append(letter).Append(next);
                continue;
            }

            if (letter == '(' && !inClass && source.AsSpan(at).StartsWith("(?") && !source.AsSpan(at).StartsWith("(?:"))
            {
                throw new SchemaException($"The pattern `{source}` uses a special group; only ( ) and (?: ) are allowed.");
            }

            inClass = letter switch { '[' => true, ']' => false, _ => inClass };
            result.Append(letter == '$' && !inClass ? @"\z" : letter.ToString());
        }

        return result.ToString();
    }
}

/// <summary>A schema of Laygate's own is not written as it must be. Never caused by a plan.</summary>
public sealed class SchemaException : Exception
{
    /// <summary>Creates one without a reason.</summary>
    public SchemaException()
    {
    }

    /// <summary>Creates one.</summary>
    /// <param name="message">What is wrong with the schema and where.</param>
    public SchemaException(string message)
        : base(message)
    {
    }

    /// <summary>Creates one that another error caused.</summary>
    /// <param name="message">What is wrong with the schema and where.</param>
    /// <param name="innerException">The cause.</param>
    public SchemaException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
