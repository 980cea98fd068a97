using System.Globalization;
using System.Reflection;
using Laygate.Mutation;

// cover FOLDER            runs every test once without a mutant
// drive FOLDER RESULTS BUDGET BUDGET-ALONE [ID …]   judges the mutants of FOLDER/mutants.tsv, or these
// work, one               the processes that drive starts
Assembly[] assemblies = [Assembly.Load("Laygate.UnitTests"), Assembly.Load("Laygate.ConformanceTests")];
var folder = args[1];
var answer = Console.Out;
Console.SetOut(TextWriter.Null);
switch (args[0])
{
    case "cover":
        using (var tests = new StreamWriter(Path.Combine(folder, "tests.tsv")))
        using (var kept = new StreamWriter(Path.Combine(folder, "kept.tsv")))
        {
            var left = args.Skip(2).ToList();
            new Coverage(tests, kept, answer).Run(assemblies, type => !left.Exists(name => type.Contains(name, StringComparison.Ordinal)));
        }

        break;
    case "drive":
        using (var driver = new Driver(folder, Number(args[3]), Number(args[4])))
        {
            var all = File.ReadLines(Path.Combine(folder, "mutants.tsv")).Select(line => int.Parse(line.Split('\t')[0], CultureInfo.InvariantCulture));
            var chosen = args.Length > 5 ? args.Skip(5).Select(id => int.Parse(id, CultureInfo.InvariantCulture)) : all.OrderBy(id => id * 2654435761u % 65521);
            driver.Run([.. chosen], args[2]);
        }

        break;
    case "work":
        new Worker(Tests(), answer).Serve(Console.In);
        break;
    case "one":
        new Worker(Tests(), answer).ServeOne(int.Parse(args[2], CultureInfo.InvariantCulture), args.Skip(3).Select(id => int.Parse(id, CultureInfo.InvariantCulture)));
        break;
}

List<TestRecord> Tests() => [.. File.ReadLines(Path.Combine(folder, "tests.tsv")).Select(TestRecord.Parse)];

static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
