using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using OxyPlot;

namespace Laygate.Reporting.Plots;

/// <summary>
/// Turns the library's drawing into one that a strict content policy lets through and that can be read aloud: style attributes become attributes
/// of their own, hatchings become patterns, and a title and a description are added.
/// </summary>
internal static class SvgFinish
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    // Lines of each pattern in a square of 8 by 8, and its ground.
    private static readonly (string Ground, string Lines)[] Patterns =
    [
        ("#c9ced2", "M-2 2 2-2M0 8 8 0M6 10 10 6"),
        ("#e9ebec", "M-2 6 2 10M0 0 8 8M6-2 10 2"),
        ("#dfe3e5", "M0 4H8"),
        ("#f2f3f4", "M4 0V8M0 4H8"),
    ];

    /// <summary>Draws and finishes.</summary>
    /// <param name="canvas">The drawing.</param>
    /// <param name="id">Id in the page; ids inside begin with it.</param>
    /// <param name="title">Title.</param>
    /// <param name="description">Description.</param>
    public static string Of(Canvas canvas, string id, string title, string description)
    {
        var exporter = new SvgExporter { Width = Canvas.Width, Height = canvas.Height, IsDocument = false };
        var root = XElement.Parse(exporter.ExportToString(canvas.Model));
        foreach (var element in root.DescendantsAndSelf().ToList())
        {
            Flatten(element, id, canvas.Rim);
        }

        root.RemoveAttributes();
        root.Add(
            new XAttribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {Canvas.Width} {canvas.Height}")),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{id}-t {id}-d"),
            new XAttribute("class", "plot"));
        root.AddFirst(
            new XElement(Svg + "title", new XAttribute("id", $"{id}-t"), title),
            new XElement(Svg + "desc", new XAttribute("id", $"{id}-d"), description),
            Defs(root, id));
        return Text(root);
    }

    private static void Flatten(XElement element, string id, bool rim)
    {
        if (element.Attribute("style") is { } style)
        {
            foreach (var part in style.Value.Split(';', StringSplitOptions.RemoveEmptyEntries))
            {
                if (part.Split(':', 2) is [var name, var value])
                {
                    element.SetAttributeValue(name.Trim(), value.Trim());
                }
            }

            style.Remove();
        }

        element.Attribute("font-family")?.Remove();
        foreach (var name in (string[])["fill", "stroke"])
        {
            if (element.Attribute(name) is { } paint)
            {
                paint.Value = Ink.Hatchings.FirstOrDefault(hatch => string.Equals(hatch.Mark, paint.Value, StringComparison.OrdinalIgnoreCase)).Pattern is { } pattern ? $"url(#{id}-{pattern})" : paint.Value;
            }
        }

        if (rim && element.Name.LocalName is "text")
        {
            element.Add(new XAttribute("paint-order", "stroke"), new XAttribute("stroke", "#fff"), new XAttribute("stroke-width", 3), new XAttribute("stroke-linejoin", "round"));
        }

        if (element.Attribute("id") is { } own)
        {
            own.Value = $"{id}-{own.Value}";
        }

        if (element.Attribute("clip-path") is { } clip)
        {
            clip.Value = clip.Value.Replace("url(#", $"url(#{id}-", StringComparison.Ordinal);
        }
    }

    private static XElement? Defs(XElement root, string id)
    {
        var all = root.Descendants().Select(element => element.Attribute("fill")?.Value).ToHashSet(StringComparer.Ordinal);
        var used = Ink.Hatchings.Select((hatch, place) => (hatch.Pattern, place)).Where(hatch => all.Contains($"url(#{id}-{hatch.Pattern})")).ToList();
        return used.Count == 0 ? null : new XElement(Svg + "defs", used.Select(hatch => new XElement(
            Svg + "pattern",
            new XAttribute("id", $"{id}-{hatch.Pattern}"), new XAttribute("width", 8), new XAttribute("height", 8), new XAttribute("patternUnits", "userSpaceOnUse"),
            new XElement(Svg + "rect", new XAttribute("width", 8), new XAttribute("height", 8), new XAttribute("fill", Patterns[hatch.place].Ground)),
            new XElement(Svg + "path", new XAttribute("d", Patterns[hatch.place].Lines), new XAttribute("stroke", "#5b636a"), new XAttribute("stroke-width", 1), new XAttribute("fill", "none")))));
    }

    private static string Text(XElement root)
    {
        var text = new StringBuilder();
        using (var writer = XmlWriter.Create(text, new XmlWriterSettings { OmitXmlDeclaration = true, Indent = false, NewLineHandling = NewLineHandling.None }))
        {
            root.Save(writer);
        }

        return text.ToString();
    }
}
