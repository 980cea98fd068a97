namespace Laygate.Reporting.Cards;

/// <summary>
/// Shares the parts of a card out over sides of A5, so that each side is full and none runs over. Heights are estimated from the number of
/// letters; a browser test measures that nothing is cut off.
/// </summary>
internal static class Paging
{
    // In points: what head and foot leave of A5, a line of the 14-point text, a line of a table at 11 points, and their widest letters.
    private const double Room = 446;
    private const double Line = 18;
    private const double Row = 14.5;
    private const double RowGap = 5;
    private const double Heading = 31;
    private const double Letters = 47;
    private const double TableLetters = 58;

    /// <summary>The sides of a card.</summary>
    public static IReadOnlyList<CardSide> Split(string role, IReadOnlyList<CardBlock> blocks, Func<string, string> continued)
    {
        var sides = new List<List<CardBlock>> { new() };
        var left = Room;
        foreach (var block in blocks)
        {
            Place(block, sides, ref left, continued);
        }

        return [.. sides.Where(side => side.Count > 0).Select((side, index) => new CardSide(role, index + 1, sides.Count, side))];
    }

    private static void Place(CardBlock block, List<List<CardBlock>> sides, ref double left, Func<string, string> continued)
    {
        var parts = Heights(block);
        var from = 0;
        while (from < parts.Count)
        {
            var used = Heading + Head(block);
            var to = from;
            while (to < parts.Count && used + parts[to] <= left)
            {
                used += parts[to++];
            }

            // A part begins here only with as much of it as makes sense; a full side takes at least one entry.
            if (to == from && left < Room)
            {
                sides.Add([]);
                left = Room;
                continue;
            }

            to = Math.Max(to, from + 1);
            sides[^1].Add(Cut(block, from, to, from == 0 ? block.Title : continued(block.Title)));
            left -= used;
            from = to;
            if (from < parts.Count)
            {
                sides.Add([]);
                left = Room;
            }
        }
    }

    private static CardBlock Cut(CardBlock block, int from, int to, string title) => block switch
    {
        CardList list => new CardList(title, [.. list.Items.Skip(from).Take(to - from)]),
        CardTable table => new CardTable(title, table.Head, [.. table.Rows.Skip(from).Take(to - from)]),
        _ => block,
    };

    private static double Head(CardBlock block) => block is CardTable table ? (Lines(table, table.Head) * Row) + RowGap : 0;

    private static List<double> Heights(CardBlock block) => block switch
    {
        CardList list => [.. list.Items.Select(item => (Wrapped(item, Letters) * Line) + 3)],
        CardTable table => [.. table.Rows.Select(row => (Lines(table, row) * Row) + RowGap)],
        _ => [120],
    };

    // As a browser lays out a table: each column gets its longest word, and what is left goes to those that want more.
    private static double Lines(CardTable table, IReadOnlyList<string> row)
    {
        var columns = Enumerable.Range(0, table.Head.Count).Select(column => table.Rows.Append(table.Head).Select(cells => cells[column]).ToList()).ToList();
        var least = columns.Select(cells => (double)cells.Max(LongestWord)).ToList();
        var most = columns.Select(cells => (double)cells.Max(cell => cell.Length)).ToList();
        var left = TableLetters - (1.3 * columns.Count) - least.Sum();
        var wanted = most.Sum() - least.Sum();
        var share = wanted <= 0 ? 0 : Math.Clamp(left / wanted, 0, 1);
        return Enumerable.Range(0, columns.Count).Max(column => Wrapped(row[column], least[column] + (share * (most[column] - least[column]))));
    }

    private static int LongestWord(string text) => text.Split(' ', '-', CardTexts.SoftHyphen).Max(word => word.Length);

    private static int Wrapped(string text, double width)
    {
        var (lines, used) = (1, 0);
        foreach (var word in text.Split(' ', CardTexts.SoftHyphen))
        {
            if (used > 0 && used + 1 + word.Length > width)
            {
                lines++;
                used = word.Length;
            }
            else
            {
                used += word.Length + (used > 0 ? 1 : 0);
            }
        }

        return lines;
    }
}
