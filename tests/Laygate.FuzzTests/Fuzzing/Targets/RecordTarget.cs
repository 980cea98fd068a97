using System.Text;
using Laygate.Checking;
using Laygate.Checking.Records;
using Laygate.ConformanceTests;
using Laygate.Reading.Parts;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Records;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>Records of shifts: their mapping, or one of their raw files. A row is taken or refused with its place, and whatever is taken makes a ledger.</summary>
/// <param name="isMapping">Whether the mapping is changed; else the tickets.</param>
internal sealed class RecordTarget(bool isMapping) : Target
{
    private const string Mapping = """
        format: 1
        record: { about: Invented for the fuzzer., uncertainty: { mass: 0.2 %, density: 1.0 %, width: 0.5 %, length: 0.1 %, temperature: 1 K, skin: 2.3 K } }
        files:
          - file: tickets.csv
            holds: load-tickets
            encoding: utf-8
            delimiter: semicolon
            decimal_mark: comma
            grouping: point
            dates: day-month-year
            zone: Europe/Berlin
            columns:
              - { column: Schein, quantity: ticket }
              - { column: Zeit, quantity: loaded }
              - { column: Sorte, quantity: mix, words: { AC 16 B S: ac16-binder } }
              - { column: Brutto, quantity: gross, unit: kg }
              - { column: Tara, quantity: tare, unit: kg }
              - { column: Netto, quantity: net, unit: kg }
              - { column: Status, quantity: status, words: { gut: valid, storniert: void } }
          - file: stops.csv
            holds: stops
            encoding: utf-8
            delimiter: comma
            decimal_mark: point
            zone: +02:00
            day: 2027-05-14
            columns:
              - { column: from, quantity: from }
              - { column: to, quantity: to }
        """;

    private const string Tickets = "Schein;Zeit;Sorte;Brutto;Tara;Netto;Status\n0017;14.05.2027 20:45;AC 16 B S;40.260;15.600;24.660;gut\n0018;14.05.2027 21:05;AC 16 B S;40.370;15.740;24.630;gut\n0018;14.05.2027 21:05;AC 16 B S;40.370;15.740;24.630;storniert\n0019;15.05.2027 00:10;\"AC 16 B S\";40.100,5;15.600;24.500,5;gut\n";

    private const string Stops = "from,to\n22:48,22:55\n00:26,\n";

    private const string Plan = "examples/quay-road-hot-on-hot.yaml";

    private static readonly PlanTools Tools = new();

    /// <inheritdoc/>
    public override string Name => isMapping ? "record mapping" : "record table";

    /// <inheritdoc/>
    public override int Share => 25;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = new([isMapping ? new Seed("mapping of a record", Mapping) : new Seed("tickets of a record", Tickets)]);

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var changed = isMapping ? "record.yaml" : "tickets.csv";
        var folder = new RuleFolderInMemory("rec", new Dictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["record.yaml"] = isMapping ? bytes : Encoding.UTF8.GetBytes(Mapping),
            ["tickets.csv"] = isMapping ? Encoding.UTF8.GetBytes(Tickets) : bytes,
            ["stops.csv"] = Encoding.UTF8.GetBytes(Stops),
        });
        var read = RecordReader.Read(folder);
        Require(read.Record is not null || read.Refused.Count > 0, "neither a record nor a refusal");
        Require(read.Refused.Concat(read.Notes).All(problem => !string.IsNullOrWhiteSpace(problem.Message) && problem.Message.Length < 2000), "a refusal without words, or of too many");
        Places(read.Refused.Concat(read.Notes).Where(problem => problem.File.EndsWith(changed, StringComparison.Ordinal)).Select(problem => problem.Position), isMapping ? bytes : Seen(bytes));
        if (read.Record is null)
        {
            return Answer.Refused;
        }

        var (shift, problems) = RecordedShift.Open(Tools, Plan, Repository.Bytes(Repository.Whole("quay-road-hot-on-hot")), new NoPartFiles(), folder);
        Require(shift is not null, $"a record that was read cannot be opened: {(problems.Count > 0 ? problems[0].Message : string.Empty)}");
        if (shift!.Ledger(null, Repository.Version).Report is { } ledger)
        {
            _ = LedgerLines.Of(ledger, full: true);
            LedgerJson.Write(ledger, Stream.Null);
        }

        // A mapping is taken where it can be used; rows that do not fit it are refused one by one.
        return read.Refused.Count > 0 && !isMapping ? Answer.Refused : Answer.Accepted;
    }

    // A single carriage return ends a line of a table, but none of a mapping, where positions are those of a text editor.
    private static byte[] Seen(byte[] bytes) => bytes.Contains((byte)'\r') ? Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(bytes).ReplaceLineEndings("\n")) : bytes;
}
