namespace Laygate.Checking.Starting;

/// <summary>Which elements of a draft the blank of a key may name.</summary>
internal static class DraftReferences
{
    /// <summary>The ids of the elements that a key names; empty where it names none.</summary>
    /// <param name="plan">The draft.</param>
    /// <param name="path">The key from the top of the plan.</param>
    public static IReadOnlyList<string> Ids(DraftMap plan, string path) => path[(path.LastIndexOf('.') + 1)..] switch
    {
        "course" => In(plan, "courses"),
        "run" or "beside" => In(plan, "runs"),
        "mix" => In(plan, "mixes"),
        "plant" => In(plan, "supply", "plants"),
        "phase" => In(plan, "rolling", "phases"),
        "paver" => In(plan, "pavers"),
        _ => [],
    };

    /// <summary>Fills every blank that can name one element only.</summary>
    public static void Fill(DraftMap plan) => Fill(plan, plan, string.Empty);

    private static void Fill(DraftMap plan, DraftNode node, string path)
    {
        switch (node)
        {
            case DraftText { Text: null } blank when Ids(plan, path) is [var only]:
                blank.Text = only;
                break;
            case DraftMap map:
                map.Entries.ForEach(entry => Fill(plan, entry.Value, path.Length == 0 ? entry.Key : $"{path}.{entry.Key}"));
                break;
            case DraftList list:
                list.Items.ForEach(item => Fill(plan, item, path));
                break;
        }
    }

    private static IReadOnlyList<string> In(DraftMap plan, params ReadOnlySpan<string> way) => (plan.At(way) as DraftList)?.EntryNames ?? [];
}
