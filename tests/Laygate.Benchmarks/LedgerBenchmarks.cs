using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;

namespace Laygate.Benchmarks;

/// <summary>A record of 10,000 rows (2,500 tickets, as many deliveries and 5,000 stations): reading it, and its ledger.</summary>
[MemoryDiagnoser]
public class LedgerBenchmarks
{
    private const string PlanText = """
        format: 1
        plan: { id: small, stage: concept }
        shift: { date: 2027-05-14, start: "21:15", end: "05:00", zone: +02:00 }
        mixes: [{ id: m, density: { compacted: 2.40 t/m3 } }]
        courses: [{ id: c, mix: m, thickness: 40 mm }]
        runs: [{ id: r, courses: [c], paver: p, from: 0 m, to: 100000 m, width: 7.5 m }]
        pavers: [{ id: p, courses: [c], speed: 4 m/min }]
        supply: { trucks: [{ id: t, mix: m, payload: 25 t, haul_out: 30 min }] }
        """;

    private readonly RuleFolderInMemory folder = new("record", Files(2500));
    private readonly RuleFolderInMemory small = new("record", Files(1));
    private readonly Plan plan = new PlanReader().Read("plan", Encoding.UTF8.GetBytes(PlanText), new NoParts()).Plans[0].Plan;
    private readonly QuantityCatalogue catalogue = LaygateQuantities.Catalogue();
    private ShiftRecord? record;

    /// <summary>Bytes to rows.</summary>
    [Benchmark]
    public double Read() => RecordReader.Read(folder).Record!.Loads.Count;

    /// <summary>Rows to the ledger.</summary>
    [Benchmark]
    public double Ledger()
    {
        record ??= RecordReader.Read(folder).Record!;
        return ShiftLedgers.Of(new QuantityContext(plan, catalogue, LaygateAssumptions.Set(), 1) { IsQuick = true }, record, null)!.Courses[0].Laid.Si;
    }

    /// <summary>The same with one row in each file: what reading costs before the first row.</summary>
    [Benchmark]
    public double ReadOneRow() => RecordReader.Read(small).Record!.Loads.Count;

    private static Dictionary<string, byte[]> Files(int loads)
    {
        var (tickets, deliveries, stations) = (new StringBuilder("n,t,m\n"), new StringBuilder("n,t,s\n"), new StringBuilder("t,s\n"));
        var start = new DateTime(2027, 5, 14, 21, 15, 0, DateTimeKind.Unspecified);
        for (var i = 0; i < loads; i++)
        {
            tickets.Append(CultureInfo.InvariantCulture, $"{i},{start.AddMinutes((8 * i) - 40):yyyy-MM-dd HH:mm},{24 + (i % 7 * 0.1):0.0}\n");
            deliveries.Append(CultureInfo.InvariantCulture, $"{i},{start.AddMinutes(8 * i):yyyy-MM-dd HH:mm},{34 * (i + 1)}\n");
        }

        for (var i = 0; i < 2 * loads; i++)
        {
            stations.Append(CultureInfo.InvariantCulture, $"{start.AddMinutes(4 * i):yyyy-MM-dd HH:mm},{17 * (i + 2)}\n");
        }

        const string Mapping = """
            format: 1
            record: { plan: small, uncertainty: { mass: 0.2 %, density: 1 %, width: 0.5 %, length: 0.1 % } }
            files:
              - { file: t.csv, holds: load-tickets, encoding: utf-8, delimiter: comma, decimal_mark: point, zone: UTC, columns: [{ column: n, quantity: ticket }, { column: t, quantity: loaded }, { column: m, quantity: net, unit: t }] }
              - { file: d.csv, holds: deliveries, encoding: utf-8, delimiter: comma, decimal_mark: point, zone: UTC, columns: [{ column: n, quantity: ticket }, { column: t, quantity: emptied }, { column: s, quantity: station, unit: m }] }
              - { file: s.csv, holds: stations, encoding: utf-8, delimiter: comma, decimal_mark: point, zone: UTC, columns: [{ column: t, quantity: at }, { column: s, quantity: station, unit: m }] }
            """;
        return new Dictionary<string, byte[]>(StringComparer.Ordinal)
        {
            [RecordReader.MappingFile] = Encoding.UTF8.GetBytes(Mapping),
            ["t.csv"] = Encoding.UTF8.GetBytes(tickets.ToString()),
            ["d.csv"] = Encoding.UTF8.GetBytes(deliveries.ToString()),
            ["s.csv"] = Encoding.UTF8.GetBytes(stations.ToString()),
        };
    }

    private sealed class NoParts : IPartFiles
    {
        public PartText Read(string from, string name) => new(name, null, "There is none.");
    }
}
