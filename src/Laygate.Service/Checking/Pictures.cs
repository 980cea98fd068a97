using System.Text.Json;
using Laygate.Register;
using Laygate.Reporting.Plots;
using Laygate.Rules.Results;

namespace Laygate.Service.Checking;

/// <summary>The plots of a report as they are kept with it: later rules and programs may draw others, what was shown stays.</summary>
internal static class Pictures
{
    private const int Format = 1;

    /// <summary>The plots of each report of a file, ready to be kept; null where nothing was drawn.</summary>
    /// <param name="result">What the check found, with plots worked out.</param>
    public static byte[]? Of(FileResult result)
    {
        var drawn = Drawn(result.Reports);
        if (drawn.All(plots => plots.Count == 0))
        {
            return null;
        }

        return Packed.Of(output => JsonSerializer.Serialize(output, new Kept(Format, drawn)));
    }

    /// <summary>The plots of each report.</summary>
    /// <param name="reports">Reports with plots worked out.</param>
    public static IReadOnlyList<IReadOnlyList<PlotFigure>> Drawn(IEnumerable<Report> reports) =>
        [.. reports.Select((report, index) => PlotFigures.Of(report, Prefix(index)))];

    /// <summary>Plots that were kept, report by report; none where none were.</summary>
    /// <param name="kept">What <see cref="Of"/> gave.</param>
    /// <exception cref="InvalidDataException">It is none of ours.</exception>
    public static IReadOnlyList<IReadOnlyList<PlotFigure>> Read(byte[]? kept)
    {
        if (kept is null)
        {
            return [];
        }

        using var unpacked = Packed.Open(kept);
        return JsonSerializer.Deserialize<Kept>(unpacked) is { Format: Format } read ? read.Reports : throw new InvalidDataException("The kept plots are of another program.");
    }

    /// <summary>What the ids of the parts of a report begin with on a page.</summary>
    /// <param name="index">Its place among the reports, from 0.</param>
    public static string Prefix(int index) => FormattableString.Invariant($"p{index + 1}");

    private sealed record Kept(int Format, IReadOnlyList<IReadOnlyList<PlotFigure>> Reports);
}
