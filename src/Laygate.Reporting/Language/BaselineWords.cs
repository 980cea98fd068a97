using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>What a baseline did, in words.</summary>
public static class BaselineWords
{
    /// <summary>One or more sentences.</summary>
    public static string Of(BaselineUse use)
    {
        var day = use.Written.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var known = use.Known == 0 ? "none of these findings is in it." : string.Create(CultureInfo.InvariantCulture, $"{use.Known} of these findings known earlier, not counted.");
        var worse = use.Worse > 0 ? string.Create(CultureInfo.InvariantCulture, $" Grown worse and counted again: {use.Worse}.") : string.Empty;
        var gone = use.Gone > 0 ? string.Create(CultureInfo.InvariantCulture, $" Gone: {use.Gone}; write the baseline anew.") : string.Empty;
        return $"Baseline {PlainText.Show(use.File)} of {day}: {known}{worse}{gone}";
    }
}
