using System.Text;

namespace Laygate.PlanKeys;

/// <summary>From the names and sentences of the schema to those of code.</summary>
internal static class Names
{
    /// <summary><c>bond_coat</c> and <c>hot-on-hot</c> as <c>BondCoat</c> and <c>HotOnHot</c>.</summary>
    public static string Pascal(string name) => string.Concat(name.Split('_', '-').Select(part => char.ToUpperInvariant(part[0]) + part.Substring(1)));

    /// <summary>A line that documents what follows; what the schema sets in backticks is code.</summary>
    public static StringBuilder Summary(this StringBuilder code, string indent, string meaning)
    {
        var parts = meaning.Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").Split('`');
        var text = string.Concat(parts.Select((part, at) => at % 2 == 1 ? $"<c>{part}</c>" : part));
        return code.Append(indent).Append("/// <summary>").Append(text).Append("</summary>\n");
    }

    /// <summary>A text as it is written in code.</summary>
    public static string Quoted(string text) => Microsoft.CodeAnalysis.CSharp.SymbolDisplay.FormatLiteral(text, quote: true);
}
