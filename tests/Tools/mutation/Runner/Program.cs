using System.Globalization;
using System.Reflection;
using Laygate.Mutation;

// cover FOLDER NAME …     runs every test once without a mutant, but those of classes with such a NAME; with +NAME only these, and adds them
// drive FOLDER RESULTS BUDGET BUDGET-ALONE [ID …]   judges the mutants of FOLDER/mutants.tsv, or these
// work, one               the processes that drive starts
var assemblies = TestCaches.Assemblies;
var folder = args[1];
var answer = Console.Out;
Console.SetOut(TextWriter.Null);
switch (args[0])
{
    case "cover":
        var only = args.Skip(2).Where(name => name.StartsWith('+')).Select(name => name[1..]).ToList();
        var left = args.Skip(2).Where(name => !name.StartsWith('+')).ToList();
        using (var tests = new StreamWriter(Path.Combine(folder, "tests.tsv"), append: only.Count > 0))
        using (var kept = new StreamWriter(Path.Combine(folder, "kept.tsv"), append: only.Count > 0))
        {
            new Coverage(tests, kept, answer).Run(
                assemblies,
                type => !left.Exists(name => type.Contains(name, StringComparison.Ordinal)) && (only.Count == 0 || only.Exists(name => type.Contains(name, StringComparison.Ordinal))));
        }

        break;
    case "drive":
        using (var driver = new Driver(folder, Number(args[3]), Number(args[4])))
        {
            var all = File.ReadLines(Path.Combine(folder, "mutants.tsv")).Select(line => line.Split('\t'))
                .Select(parts => (Id: int.Parse(parts[0], CultureInfo.InvariantCulture), Folder: parts[1])).ToList();

            // Far from each other in the list, so that a part of the run speaks for the whole.
            var named = args.Skip(5).Select(id => int.Parse(id, CultureInfo.InvariantCulture)).ToHashSet();
            var chosen = all.Where(one => named.Count == 0 || named.Contains(one.Id)).OrderBy(one => one.Id * 2654435761u % 65521).ToList();
            driver.Run(chosen, args[2]);
        }

        break;
    case "work":
        new Worker(Tests(), Keeping(), answer).Serve(Console.In);
        break;
    case "one":
        new Worker(Tests(), Keeping(), answer).ServeOne(int.Parse(args[2], CultureInfo.InvariantCulture), args.Skip(3).Select(id => int.Parse(id, CultureInfo.InvariantCulture)));
        break;
}

List<TestRecord> Tests() => [.. File.ReadLines(Path.Combine(folder, "tests.tsv")).Select(TestRecord.Parse)];

HashSet<string> Keeping() => File.ReadLines(Path.Combine(folder, "kept.tsv")).Select(line => line.Split('\t')[2]).ToHashSet(StringComparer.Ordinal);

static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
