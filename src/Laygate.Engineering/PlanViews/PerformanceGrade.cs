using System.Globalization;

namespace Laygate.Engineering.PlanViews;

/// <summary>US performance grades of binders, such as <c>PG 64-22</c>.</summary>
internal static class PerformanceGrade
{
    /// <summary>Reads the high and the low grade (the latter without its sign).</summary>
    /// <returns>Both, or null when the text is no performance grade.</returns>
    public static (int High, int Low)? Read(string? grade)
    {
        if (grade is null || !grade.StartsWith("PG", StringComparison.Ordinal))
        {
            return null;
        }

        var parts = grade[2..].Trim().Split('-');
        return parts.Length == 2 && Number(parts[0]) is { } high && Number(parts[1]) is { } low ? (high, low) : null;
    }

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
