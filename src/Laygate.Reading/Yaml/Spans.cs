using Laygate.Rules.Results;

namespace Laygate.Reading.Yaml;


/// <summary>Spans as positions of results.</summary>
internal static class Spans
{
    public static Position Of(TextSpan span) => new(span.Line, span.Column, span.EndLine, span.EndColumn) { File = span.File };
}
