using System.Globalization;
using Laygate.Mutation;
using Microsoft.CodeAnalysis;

// Mutator TREE LIBRARIES SEED COUNT
// Writes COUNT mutants, drawn by SEED, into the copy of the repository at TREE, and lists them in TREE/mutants.tsv.
// LIBRARIES holds the packages that the rooms use: the output folder of a built test project.
var (tree, libraries) = (args[0], args[1]);
var seed = int.Parse(args[2], CultureInfo.InvariantCulture);
var count = int.Parse(args[3], CultureInfo.InvariantCulture);

var platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
var outside = platform.Concat(Directory.EnumerateFiles(libraries, "*.dll").Where(path => !Path.GetFileName(path).StartsWith("Laygate.", StringComparison.Ordinal)))
    .DistinctBy(Path.GetFileName, StringComparer.Ordinal).Select(path => (MetadataReference)MetadataReference.CreateFromFile(path)).ToList();
File.WriteAllText(Path.Combine(tree, "src/Laygate.Model/MutantSwitch.cs"), Schemata.SwitchText);

var rooms = new List<Room>();
foreach (var name in new[] { "Model", "Engineering", "Rules", "Exchange", "Reading", "Checking" })
{
    rooms.Add(Room.Read(tree, name, [.. outside, .. rooms.Select(room => room.Compilation.ToMetadataReference())]));
}

// These two hold shapes, nothing that computes.
rooms.RemoveAll(room => room.Name is "Model" or "Exchange");
var found = rooms.SelectMany(room => room.Mutants().Select(one => (room, one.Folder, one.Mutant))).ToList();
var byFolder = found.GroupBy(one => one.Folder, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
var quotas = Sample.Quotas(byFolder, count);

// Some mutants do not build; a quarter more is drawn and the surplus left out of the list.
var drawn = found.GroupBy(one => one.Folder, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal)
    .SelectMany(group => Sample.Shuffled(group, seed).Take((quotas[group.Key] * 5 / 4) + 3))
    .Select((one, index) => (one.room, one.Folder, Mutant: one.Mutant with { Id = index + 1 })).ToList();
var refused = new HashSet<int>();
foreach (var room in rooms)
{
    refused.UnionWith(room.Write([.. drawn.Where(one => one.room == room).Select(one => one.Mutant)]));
    room.Save();
}

var sample = drawn.Where(one => !refused.Contains(one.Mutant.Id)).GroupBy(one => one.Folder, StringComparer.Ordinal).SelectMany(group => group.Take(quotas[group.Key])).ToList();
File.WriteAllLines(Path.Combine(tree, "mutants.tsv"), sample.Select(one => string.Join('\t', one.Mutant.Id, one.Folder, one.room.PathOf(one.Mutant.Node), one.Mutant.Line, one.Mutant.Operator, one.Mutant.Change)));
Console.WriteLine($"{found.Count} places found, {drawn.Count} drawn, {refused.Count} do not build, {sample.Count} in the sample");
