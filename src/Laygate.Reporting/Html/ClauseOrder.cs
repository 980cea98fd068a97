using System.Globalization;

namespace Laygate.Reporting.Html;

/// <summary>Order of clauses as a publication counts them: numbers as numbers, so that 5.9 comes before 5.10.</summary>
internal sealed class ClauseOrder : IComparer<string>
{
    public static ClauseOrder Instance { get; } = new();

    public int Compare(string? x, string? y)
    {
        var (left, right) = (Parts(x ?? string.Empty), Parts(y ?? string.Empty));
        for (var i = 0; i < Math.Min(left.Count, right.Count); i++)
        {
            var order = long.TryParse(left[i], NumberStyles.None, CultureInfo.InvariantCulture, out var one) && long.TryParse(right[i], NumberStyles.None, CultureInfo.InvariantCulture, out var other)
                ? one.CompareTo(other)
                : string.CompareOrdinal(left[i], right[i]);
            if (order != 0)
            {
                return order;
            }
        }

        return left.Count != right.Count ? left.Count.CompareTo(right.Count) : string.CompareOrdinal(x, y);
    }

    private static List<string> Parts(string clause)
    {
        var parts = new List<string>();
        for (var i = 0; i < clause.Length;)
        {
            var end = i + 1;
            while (end < clause.Length && char.IsAsciiDigit(clause[end]) == char.IsAsciiDigit(clause[i]))
            {
                end++;
            }

            parts.Add(clause[i..end]);
            i = end;
        }

        return parts;
    }
}
