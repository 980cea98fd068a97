using Laygate.Model.Records;
using Laygate.Reading.Records;

namespace Laygate.UnitTests.Reading.Records;

/// <summary>Tickets that stand twice, are void, conflict or are missing.</summary>
public sealed class TicketBookTests
{
    private const string One = "1,21:15,41.26,15.94,25.32,valid";
    private const string Two = "2,21:25,40.00,16.00,24.00,valid";

    /// <summary>The same record twice is the record once, with one notice for each row.</summary>
    [Fact]
    public void A_file_and_its_own_copy_are_the_file_with_a_notice_for_each_row()
    {
        var (once, twice) = (Shift.ReadTickets(One, Two), Shift.ReadTickets(One, Two, One, Two));
        Assert.Equal(Shift.Of(once).Loads, Shift.Of(twice).Loads);
        Assert.Equal([4, 5], twice.Notes.Where(note => note.Message.Contains("counts once", StringComparison.Ordinal)).Select(note => note.Position!.Line));
        Assert.Empty(twice.Refused);
    }

    [Fact]
    public void Two_contents_under_one_number_wait_for_a_decision()
    {
        var file = Shift.ReadTickets(One, One.Replace("41.26", "41.30", StringComparison.Ordinal).Replace("25.32", "25.36", StringComparison.Ordinal), Two);
        Assert.Equal(["2"], Shift.Of(file).Loads.Select(load => load.Ticket), StringComparer.Ordinal);
        Assert.Contains("Neither counts", Assert.Single(file.Refused).Message, StringComparison.Ordinal);
    }

    /// <summary>The original stands where the mapping says so: Delaware Department of Transportation, contract text of fiscal year 2024, electronic tickets (read).</summary>
    [Fact]
    public void The_original_stands_where_the_mapping_says_so()
    {
        var mapping = Shift.File("t.csv", "load-tickets", "    on_conflict: original\n" + Shift.Tickets);
        var file = Shift.Read(mapping, ("t.csv", $"ticket,loaded,gross,tare,net,status\n{One}\n1,21:15,41.30,15.94,25.36,valid\n"));
        // Derived: 41.26 - 15.94 t.
        Assert.Equal(25_320, Assert.Single(Shift.Of(file).Loads).Net, 1e-6);
    }

    [Theory]
    [InlineData("1,21:15,41.26,15.94,25.32,void", LoadState.Void)]
    [InlineData("1,21:15,41.26,15.94,25.32,refused", LoadState.Refused)]
    [InlineData("1,21:15,41.26,15.94,25.32,returned", LoadState.Returned)]
    public void The_last_status_holds_in_whatever_order_rows_stand(string row, LoadState state)
    {
        Assert.Equal(state, Assert.Single(Shift.Of(Shift.ReadTickets(One, row)).Loads).State);
        Assert.Equal(state, Assert.Single(Shift.Of(Shift.ReadTickets(row, One)).Loads).State);
        Assert.Equal(0, Shift.Of(Shift.ReadTickets(One, row)).Loads[0].Laid);
    }

    [Fact]
    public void A_void_ticket_makes_room_for_one_with_other_content()
    {
        var file = Shift.ReadTickets("1,21:15,41.30,15.94,25.36,void", One);
        Assert.Equal((LoadState.Valid, 1), (Shift.Of(file).Loads[0].State, file.Record!.Loads.Count));
        Assert.Empty(file.Refused);
    }

    [Fact]
    public void A_line_of_totals_is_no_load()
    {
        var file = Shift.ReadTickets(One, Two, "Total,21:25,,,49.32,");
        Assert.Equal(2, Shift.Of(file).Loads.Count);
        Assert.Contains("sum of all rows", Assert.Single(file.Refused).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_printed_net_counts_only_while_it_is_gross_less_tare()
    {
        var file = Shift.ReadTickets("1,21:15,41.26,15.94,25.90,valid");
        // Derived: 41.26 - 15.94 t.
        Assert.Equal(25_320, Shift.Of(file).Loads[0].Net, 1e-6);
        Assert.Contains("Gross less tare counts", Assert.Single(file.Notes).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_order_of_rows_changes_nothing()
    {
        string[] rows = ["1,2027-05-14 21:15,41.26,15.94,25.32,valid", "2,2027-05-14 21:25,40.00,16.00,24.00,valid", "3,2027-05-14 21:25,40.10,16.00,24.10,valid", "2,2027-05-14 21:25,40.00,16.00,24.00,void"];
        var tickets = Shift.Of(Shift.ReadTickets(rows)).Loads.Select(load => (load.Ticket, load.Net, load.State, load.Loaded)).OrderBy(load => load.Ticket, StringComparer.Ordinal);
        var turned = Shift.Of(Shift.ReadTickets([.. rows.Reverse()])).Loads.Select(load => (load.Ticket, load.Net, load.State, load.Loaded)).OrderBy(load => load.Ticket, StringComparer.Ordinal);
        Assert.Equal(tickets, turned);
    }

    [Fact]
    public void Deliveries_belong_to_tickets_and_a_refused_load_does_not_count()
    {
        const string columns = "    columns:\n      - { column: ticket, quantity: ticket }\n      - { column: arrived, quantity: arrived }\n      - { column: status, quantity: status }\n";
        var file = Shift.Read(Shift.File("t.csv", "load-tickets", Shift.Tickets) + Shift.File("d.csv", "deliveries", columns),
            ("t.csv", $"ticket,loaded,gross,tare,net,status\n{One}\n{Two}\n"), ("d.csv", "ticket,arrived,status\n2,21:20,refused\n1,21:50,valid\n7,22:00,valid\n"));
        Assert.Equal([LoadState.Valid, LoadState.Refused], Shift.Of(file).Loads.OrderBy(load => load.Ticket, StringComparer.Ordinal).Select(load => load.State));
        Assert.Contains("no ticket `7`", Assert.Single(file.Refused).Message, StringComparison.Ordinal);
        Assert.Contains("the clocks differ", Assert.Single(file.Notes).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_running_numbers_are_said_and_not_filled_in()
    {
        var columns = Shift.Tickets.Replace("      - { column: status", "      - { column: no, quantity: sequence }\n      - { column: status", StringComparison.Ordinal);
        var file = Shift.Read(Shift.File("t.csv", "load-tickets", columns), ("t.csv", "ticket,loaded,gross,tare,net,no,status\n1,21:15,41.26,15.94,25.32,101,valid\n2,21:25,40,16,24,104,valid\n"));
        Assert.Contains("102 to 103 are missing", Assert.Single(file.Notes).Message, StringComparison.Ordinal);
    }
}
