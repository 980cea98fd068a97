namespace Laygate.Reporting.Cards;

/// <summary>
/// Shares the parts of a card out over sides of A5, so that each side is full and none runs over. Heights are estimated from the number of
/// letters; a browser test measures that nothing is cut off.
/// </summary>
internal static class Paging
{
    // In points: width and height inside the margins of A5, and lines of each size of type as the style sheet sets them.
    private const double Wide = 384;
    private const double High = 560;
    private const double Indent = 13;
    private const double LineGap = 1.5;
    private const double CellGap = 3;
    private const double Cell = 4.7;
    private const double Pair = 188;
    private const double Slack = 3;
    private const int Most = 2;
    private const double Few = 0.3;

    private static readonly Type Usual = new(10.5, 13, 10);
    private static readonly Type Dense = new(9.5, 12, 9);

    /// <summary>
    /// The sides of a card: in smaller type where it would otherwise take more than two, or begin a side for a few lines. A list of loads takes as many
    /// sides as it needs.
    /// </summary>
    /// <param name="card">The card.</param>
    /// <param name="frame">What stands around it.</param>
    /// <param name="texts">Words of the language.</param>
    public static IReadOnlyList<CardSide> Split(Card card, CardFrame frame, CardTexts texts)
    {
        var (usual, used) = Split(card, frame, texts, Usual);
        if (card.Blocks.Any(block => block is CardRun { IsLoads: true }) || (usual.Count <= Most && (usual.Count == 1 || used > Few)))
        {
            return usual;
        }

        var (dense, _) = Split(card, frame, texts, Dense);
        return dense.Count < usual.Count ? [.. dense.Select(side => side with { IsDense = true })] : usual;
    }

    /// <summary>Whether a card has two sides in its usual type.</summary>
    public static bool Fits(Card card, CardFrame frame, CardTexts texts) => Split(card, frame, texts, Usual).Sides.Count <= Most;

    // The sides, and the share of the last one that is taken.
    private static (IReadOnlyList<CardSide> Sides, double Used) Split(Card card, CardFrame frame, CardTexts texts, Type type)
    {
        var sides = new Sides(High - Slack - Frame(card.Role, frame), title => texts["continued", title], type);
        foreach (var block in card.Blocks)
        {
            sides.Place(block);
        }

        return ([.. sides.All.Select((side, index) => new CardSide(card.Role, index + 1, sides.All.Count, side))], sides.Used);
    }

    // Head and foot, by what they say.
    private static double Frame(string role, CardFrame frame) =>
        (Lettering.Lines(role, 17 * Lettering.Bold, Wide - 80) * 18.7) + 5.4
        + (frame.IsDraft ? 23 : 0)
        + (Lettering.Lines(frame.Plan, 8.5, Wide) * 10.2) + 2.9
        + (Lines(new CardLine(frame.Caution, frame.Issued), 8.5, Wide) * 10.2) + 7;

    private static double Heading(string title) => (Lettering.Lines(title, 12 * Lettering.Bold, Wide) * 14.4) + 7.8;

    private static CardBlock Cut(CardBlock block, int from, int to, string title) => block switch
    {
        CardList list => list with { Title = title, Items = [.. list.Items.Skip(from).Take(to - from)] },
        CardTable table => table with { Title = title, Rows = [.. table.Rows.Skip(from).Take(to - from)] },
        CardRun loads => loads with { Title = title, Rows = [.. loads.Rows.Skip(from).Take(to - from)] },
        _ => block,
    };

    private static double Head(CardBlock block, Type type) => block switch
    {
        CardTable table => Row(table.Head, table.Rows, table.Head, Wide, type),
        CardRun loads => Row(loads.Head, loads.Rows, loads.Head, Pair, type),
        _ => 0,
    };

    private static List<double> Heights(CardBlock block, Type type) => block switch
    {
        CardList { IsLarge: true } list => [.. list.Items.Select(item => (Lines(item, type.Large, Wide - Indent) * type.Large * 1.22) + LineGap)],
        CardList list => [.. list.Items.Select(item => (Lines(item, type.Small, Wide - Indent) * type.Small * 1.2) + LineGap)],
        CardTable table => [.. table.Rows.Select(row => Row(table.Head, table.Rows, row, Wide, type))],
        CardRun loads => [.. loads.Rows.Select((row, index) => index % 2 == 0 ? loads.Rows.Skip(index).Take(2).Max(one => Row(loads.Head, loads.Rows, one, Pair, type)) : 0)], // Two rows stand side by side.
        CardStrips strips => [(((strips.Strips.Count * 11) + 18) * Wide / 400) + (Lettering.Lines(strips.Remark, 9.5, Wide) * 11.4) + 5],
        _ => [0],
    };

    // Leading words are bold.
    private static int Lines(CardLine item, double size, double width) =>
        Lettering.Lines(item.Whole, size * (1 + ((Lettering.Bold - 1) * item.Lead.Length / Math.Max(1, item.Whole.Length))), width);

    // As a browser lays out a table: each column gets its longest word, and what is left goes to those that want more. Head and first column are bold.
    private static double Row(IReadOnlyList<string> head, IReadOnlyList<IReadOnlyList<string>> rows, IReadOnlyList<string> row, double width, Type type)
    {
        var columns = Enumerable.Range(0, head.Count).ToList();
        double Size(IReadOnlyList<string> of, int column) => type.Cells * (ReferenceEquals(of, head) || column == 0 ? Lettering.Bold : 1);
        var least = columns.Select(column => rows.Append(head).Max(cells => Lettering.LongestWord(cells[column], Size(cells, column)))).ToList();
        var most = columns.Select(column => rows.Append(head).Max(cells => Lettering.Width(cells[column], Size(cells, column)))).ToList();
        var left = width - (Cell * columns.Count) - least.Sum();
        var wanted = most.Sum() - least.Sum();
        var share = wanted <= 0 ? 0 : Math.Clamp(left / wanted, 0, 1);
        return (columns.Max(column => Lettering.Lines(row[column], Size(row, column), least[column] + (share * (most[column] - least[column])) + 0.1)) * type.CellLine) + CellGap;
    }

    /// <summary>Sizes of type in points: lists, lists that are read while a machine runs, tables.</summary>
    private sealed record Type(double Small, double Large, double Cells)
    {
        public double CellLine => Cells * 1.15;
    }

    private sealed class Sides(double room, Func<string, string> continued, Type type)
    {
        private double left;

        public List<List<CardBlock>> All { get; } = [];

        public double Used => 1 - (left / room);

        public void Place(CardBlock block)
        {
            var parts = Heights(block, type);
            var from = 0;
            while (from < parts.Count)
            {
                var used = Heading(from == 0 ? block.Title : continued(block.Title)) + Head(block, type);
                var to = from;
                while (to < parts.Count && used + parts[to] <= left)
                {
                    used += parts[to++];
                }

                // A part begins here only with as much of it as makes sense; a full side takes at least one entry.
                if (to == from && (All.Count == 0 || left < room))
                {
                    Turn();
                    continue;
                }

                to = Math.Max(to, from + 1);
                All[^1].Add(Cut(block, from, to, from == 0 ? block.Title : continued(block.Title)));
                left -= used;
                from = to;
                if (from < parts.Count)
                {
                    Turn();
                }
            }
        }

        private void Turn()
        {
            All.Add([]);
            left = room;
        }
    }
}
