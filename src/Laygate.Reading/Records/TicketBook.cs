using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Records;

/// <summary>
/// Makes loads of tickets and deliveries: a ticket that stands twice counts once, one with other content waits for a decision, a void
/// one does not count, and the last status of each holds. Every such row is named.
/// </summary>
internal sealed class TicketBook(Action<RowPlace, string, string?> refuse, Action<RowPlace, string> note)
{
    // What a later row may change without being another load.
    private static readonly string[] Status = ["status"];

    // Kilograms. Judgement: twice what the largest trucks on public roads weigh with their load; what is heavier is a slip of the unit.
    private const double Most = 100e3;

    // Half a kilogram: no more than the digits of a spreadsheet, where the mapping declares no division of the scale.
    private const double Digits = 0.5;

    /// <summary>The loads.</summary>
    /// <param name="tickets">Rows of tickets with whether the first of two that differ counts, in the order of the files.</param>
    /// <param name="deliveries">Rows of deliveries.</param>
    public IReadOnlyList<Load> Loads(IReadOnlyList<(RecordRow Row, FileMapping File)> tickets, IReadOnlyList<RecordRow> deliveries)
    {
        var totals = Totals(tickets);
        var sites = Sites(deliveries, tickets.Select(ticket => ticket.Row.Text("ticket")!).ToHashSet(StringComparer.Ordinal));
        var loads = tickets.Where(ticket => ticket.Row != totals).GroupBy(ticket => ticket.Row.Text("ticket")!, StringComparer.Ordinal)
            .Select(group => Decide([.. group.Select(one => one.Row)], group.First().File.OriginalStands) is { } row
                ? Of(row, group.First().File.Division ?? Digits, sites.GetValueOrDefault(row.Text("ticket")!))
                : null)
            .OfType<Load>().ToList();
        Sequence(tickets);
        return [.. loads.OrderBy(load => load.Emptied ?? load.Loaded).ThenBy(load => load.Place.File, StringComparer.Ordinal).ThenBy(load => load.Place.Line)];
    }

    // A line of totals at the end would double the sum exactly.
    private RecordRow? Totals(IReadOnlyList<(RecordRow Row, FileMapping File)> tickets)
    {
        if (tickets.Count < 3 || tickets[^1].Row is not { } last || Net(last, 0).Mass is not { } total)
        {
            return null;
        }

        var sum = tickets.Take(tickets.Count - 1).Where(ticket => string.Equals(ticket.Row.Place.File, last.Place.File, StringComparison.Ordinal)).Sum(ticket => Net(ticket.Row, 0).Mass ?? 0);
        if (Math.Abs(sum - total) > Digits)
        {
            return null;
        }

        refuse(last.Place, "This row is the sum of all rows above: a line of totals, not a load.", "Leave it out of the export.");
        return last;
    }

    // Not the order of the rows decides: what is not valid any more stays so, and a void ticket makes room for one with other content.
    private RecordRow? Decide(IReadOnlyList<RecordRow> rows, bool originalStands)
    {
        var contents = new List<List<RecordRow>>();
        foreach (var row in rows)
        {
            if (contents.Find(content => content[0].Same(row, Status)) is { } known)
            {
                note(row.Place, $"Ticket {Quoted(row)} stands here again{(known.Exists(one => one.Same(row)) ? " with the same content" : $" with the status {Words.Of(State(row))}")}, as in {Where(known[0])}. It counts once.");
                known.Add(row);
            }
            else
            {
                contents.Add([row]);
            }
        }

        var last = contents.ConvertAll(content => content.OrderByDescending(State).ThenBy(row => row.Place.Line).First());
        var open = last.FindAll(row => State(row) != LoadState.Void);
        return open.Count <= 1 ? open.FirstOrDefault() ?? last[0] : Choose(open, originalStands);
    }

    private RecordRow? Choose(List<RecordRow> open, bool originalStands)
    {
        foreach (var row in open.Skip(1))
        {
            if (originalStands)
            {
                note(row.Place, $"Ticket {Quoted(row)} stands here with other content than in {Where(open[0])}. The original counts, as the mapping says.");
            }
            else
            {
                refuse(row.Place, $"Ticket {Quoted(row)} stands here with other content than in {Where(open[0])}. Neither counts until somebody decides.", "Take one of the two rows out, or write `on_conflict: original` in the mapping.");
            }
        }

        return originalStands ? open[0] : null;
    }

    private Load? Of(RecordRow row, double division, RecordRow? site)
    {
        var (mass, remark) = Net(row, division);
        if (mass is not { } net)
        {
            refuse(row.Place, "There is no net mass, and no gross and tare to tell it.", "Map `net`, or `gross` and `tare`.");
            return null;
        }

        if (net is <= 0 or > Most)
        {
            refuse(row.Place, string.Create(CultureInfo.InvariantCulture, $"A load of {net / 1000:0.###} t cannot be: more than 0 t and at most {Most / 1000:0} t fit on a truck."), "Check the unit in the mapping, and the ticket.");
            return null;
        }

        if (remark is not null)
        {
            note(row.Place, remark);
        }

        if (site?.When("arrived") < row.When("loaded"))
        {
            note(site.Place, $"Ticket {Quoted(row)} arrives here before it was loaded in {Where(row)}: the clocks differ. Nothing is shifted.");
        }

        return With(new Load(row.Place, row.Text("ticket")!, net), row, site);
    }

    private static Load With(Load load, RecordRow row, RecordRow? site) => load with
    {
        State = site?.Text("status") is { } seen && State(row) == LoadState.Valid ? StateOf(seen) : State(row),
        Course = row.Text("course"),
        Mix = row.Text("mix"),
        Vehicle = row.Text("vehicle"),
        Plant = row.Text("plant"),
        TareWeighed = row.Text("tare_kind") is { } kind ? kind is "weighed" : null,
        Loaded = row.When("loaded"),
        LoadingTemperature = row.Number("temperature"),
        Delivery = site?.Place,
        Arrived = site?.When("arrived"),
        Started = site?.When("started"),
        Emptied = site?.When("emptied"),
        StationAtEnd = site?.Number("station"),
        Run = site?.Text("run"),
        NotLaid = site?.Number("not_laid") ?? 0,
        SiteTemperature = site?.Number("temperature"),
    };

    // The printed net counts only as long as it is gross less tare within the division of the scale.
    private static (double? Mass, string? Remark) Net(RecordRow row, double division)
    {
        var (gross, tare, printed) = (row.Number("gross"), row.Number("tare"), row.Number("net"));
        if (gross is not { } full || tare is not { } empty)
        {
            return (printed, null);
        }

        var net = full - empty;
        return printed is not { } said || Math.Abs(said - net) <= division ? (net, null)
            : (net, string.Create(CultureInfo.InvariantCulture, $"The printed net of {said / 1000:0.###} t is not gross less tare, {net / 1000:0.###} t. Gross less tare counts."));
    }

    private Dictionary<string, RecordRow> Sites(IReadOnlyList<RecordRow> deliveries, HashSet<string> tickets)
    {
        var sites = new Dictionary<string, RecordRow>(StringComparer.Ordinal);
        foreach (var row in deliveries)
        {
            var ticket = row.Text("ticket")!;
            if (!tickets.Contains(ticket))
            {
                refuse(row.Place, $"There is no ticket {Quoted(row)} for this delivery.", "Add the ticket, or correct its number.");
            }
            else if (sites.TryAdd(ticket, row))
            {
                continue;
            }
            else if (sites[ticket].Same(row))
            {
                note(row.Place, $"The delivery of ticket {Quoted(row)} stands here again, as in {Where(sites[ticket])}. It counts once.");
            }
            else
            {
                refuse(row.Place, $"The delivery of ticket {Quoted(row)} stands here with other content than in {Where(sites[ticket])}. The first counts.", "Take one of the two rows out.");
            }
        }

        return sites;
    }

    // Rows that are missing look like no supply.
    private void Sequence(IReadOnlyList<(RecordRow Row, FileMapping File)> tickets)
    {
        var numbered = tickets.Select(ticket => (ticket.Row, Number: ticket.Row.Count("sequence"))).Where(one => one.Number is not null).OrderBy(one => one.Number).ToList();
        foreach (var (one, next) in numbered.Zip(numbered.Skip(1)).Where(pair => pair.Second.Number > pair.First.Number + 1 && string.Equals(pair.First.Row.Place.File, pair.Second.Row.Place.File, StringComparison.Ordinal)))
        {
            note(next.Row.Place, string.Create(CultureInfo.InvariantCulture, $"Running numbers {one.Number + 1} to {next.Number - 1} are missing before this row. Nothing is filled in."));
        }
    }

    private static LoadState State(RecordRow row) => row.Text("status") is { } status ? StateOf(status) : LoadState.Valid;

    private static LoadState StateOf(string status) => Words.Find<LoadState>(status) ?? LoadState.Valid;

    private static string Quoted(RecordRow row) => TokenNames.Quote(row.Text("ticket")!);

    private static string Where(RecordRow row) => string.Create(CultureInfo.InvariantCulture, $"{row.Place.File}, line {row.Place.Line}");
}
