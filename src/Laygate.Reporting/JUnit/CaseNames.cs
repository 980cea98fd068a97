using System.Globalization;
using Laygate.Reporting.Runs;

namespace Laygate.Reporting.JUnit;

/// <summary>
/// Makes names of cases unique in the whole document. A name that holds the file and the plan can only occur again within its file, so that names
/// are forgotten with it; those of files that share a name, of departures, which stand in a file of their own, and of problems are kept.
/// </summary>
internal sealed class CaseNames(RunHead head)
{
    private readonly HashSet<string> kept = new(StringComparer.Ordinal);
    private HashSet<string> within = [];
    private bool isShared;

    /// <summary>The next file begins.</summary>
    public void Begin(string file)
    {
        isShared = head.IsShared(file);
        within = new HashSet<string>(StringComparer.Ordinal);
    }

    /// <summary>A unique name for a finding or a departure that does not hold.</summary>
    public string Unique(ListedItem item, string name) => Unique(name, isShared || item.Finding is null ? kept : within);

    /// <summary>A unique name for a problem.</summary>
    public string Unique(string name) => Unique(name, kept);

    private static string Unique(string name, HashSet<string> names)
    {
        var unique = name;
        for (var number = 2; !names.Add(unique); number++)
        {
            unique = string.Create(CultureInfo.InvariantCulture, $"{name} ({number})");
        }

        return unique;
    }
}
