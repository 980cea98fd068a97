using System.IO.Compression;
using System.Text;
using Laygate.Reading.Plans;
using Laygate.Reading.Sets;

namespace Laygate.UnitTests.Reading.Sets;

/// <summary>A plan and the files that came with it: found in the set alone, refused with a clear line where it is none.</summary>
public sealed class PlanSetTests
{
    private const string Plan = "format: 1\nuses: [../firm/mixes.yaml]\nplan: { id: p, stage: concept }\nmixes: [ac11]\ncourses: [{ id: upper, mix: ac11, thickness: 45 mm }]\n";
    private const string Mixes = "parts: 1\nmixes:\n  - { id: ac11, kind: asphalt-concrete }\n";

    private static readonly PlanReader Reader = new();

    [Fact]
    public void A_plan_uses_what_came_with_it()
    {
        var set = Whole(("jobs/night.yaml", Plan), ("firm/mixes.yaml", Mixes));
        Assert.Equal("jobs/night.yaml", set.Plan.Name);
        var read = Reader.Read(set.Plan.Name, set.Plan.Bytes, set);
        Assert.Equal("firm/mixes.yaml", Assert.Single(Assert.Single(read.Plans).Uses).File);
    }

    [Fact]
    public void In_a_set_without_folders_a_file_is_found_by_its_own_name()
    {
        var set = Whole(("night.yaml", Plan), ("mixes.yaml", Mixes));
        Assert.Equal("mixes.yaml", Assert.Single(Assert.Single(Reader.Read(set.Plan.Name, set.Plan.Bytes, set).Plans).Uses).File);
    }

    [Theory]
    [InlineData("laygate.yaml", "uses: [firm/mixes.yaml]\n")]
    [InlineData("jobs/laygate.yaml", "uses: [../firm/mixes.yaml]\n")]
    public void Settings_that_came_with_a_plan_name_its_files(string file, string settings)
    {
        var set = Whole(("jobs/night.yaml", Plan.Replace("uses: [../firm/mixes.yaml]\n", string.Empty, StringComparison.Ordinal)), ("firm/mixes.yaml", Mixes), (file, settings));
        Assert.Equal("firm/mixes.yaml", Assert.Single(Assert.Single(Reader.Read(set.Plan.Name, set.Plan.Bytes, set).Plans).Uses).File);
    }

    [Theory]
    [InlineData("../firm/other.yaml", "There is no such file in the set.")]
    [InlineData("../Firm/Mixes.yaml", "letter case counts")]
    [InlineData("../../firm/mixes.yaml", "outside the set")]
    [InlineData("/firm/mixes.yaml", "one machine only")]
    [InlineData("C:/firm/mixes.yaml", "one machine only")]
    [InlineData("..\\firm\\mixes.yaml", "divided by `/`")]
    public void What_is_not_in_the_set_cannot_be_used(string name, string why)
    {
        var set = Whole(("jobs/night.yaml", Plan.Replace("../firm/mixes.yaml", name, StringComparison.Ordinal)), ("firm/mixes.yaml", Mixes));
        var problem = Assert.Single(Reader.Read(set.Plan.Name, set.Plan.Bytes, set).Problems);
        Assert.Contains(why, problem.Message, StringComparison.Ordinal);
        Assert.Equal(("jobs/night.yaml", 2), (problem.File, problem.Position!.Line));
    }

    [Fact]
    public void The_plan_is_the_one_that_is_named_or_the_only_one()
    {
        (string, string)[] two = [("a.yaml", Plan), ("b.yaml", Plan), ("mixes.yaml", Mixes)];
        Assert.Contains("2 files are plans: `a.yaml`, `b.yaml`.", Refusal(null, two), StringComparison.Ordinal);
        Assert.Equal("b.yaml", PlanSet.Of("set", Files(two), "b.yaml").Set!.Plan.Name);
        Assert.Contains("There is no file `c.yaml` in the set.", Refusal("c.yaml", two), StringComparison.Ordinal);
        Assert.Contains("None of the files is a plan", Refusal(null, ("mixes.yaml", Mixes)), StringComparison.Ordinal);
        Assert.Contains("1 to 60", Refusal(null), StringComparison.Ordinal);

        // A plan that cannot be read is still the plan: its reader says what is wrong.
        Assert.Equal("a.yaml", Whole(("a.yaml", Plan + "mixes: [\n"), ("mixes.yaml", Mixes)).Plan.Name);
    }

    [Theory]
    [InlineData("firm\\mixes.yaml", "backslash")]
    [InlineData("/firm/mixes.yaml", "root of a disk")]
    [InlineData("c:mixes.yaml", "root of a disk")]
    [InlineData("../mixes.yaml", "leads out of the set")]
    [InlineData("firm/../../mixes.yaml", "leads out of the set")]
    [InlineData("firm/./mixes.yaml", "folder without a name")]
    [InlineData("firm//mixes.yaml", "folder without a name")]
    [InlineData("a\0b.yaml", "NUL")]
    [InlineData("a\nb.yaml", "control character")]
    [InlineData("\uFFFD.yaml", "UTF-8")]
    [InlineData("\ud83d.yaml", "UTF-8")]
    [InlineData("", "has no name")]
    [InlineData("night.yaml", "Two files have the name")]
    [InlineData("NIGHT.yaml", "differ in letter case only")]
    [InlineData("night.yaml/mixes.yaml", "a file and the folder")]
    public void A_name_that_is_no_name_of_a_set_is_refused(string name, string why) =>
        Assert.Contains(why, Refusal(null, ("night.yaml", Plan), (name, Mixes)), StringComparison.Ordinal);

    [Fact]
    public void Sizes_are_bounded()
    {
        (string, byte[]) plan = ("night.yaml", Encoding.UTF8.GetBytes(Plan));
        string Of(params (string Name, byte[] Bytes)[] files) => Assert.Single(PlanSet.Of("set", [.. files.Select(file => new SetFile(file.Name, file.Bytes))], null).Problems).Message;
        Assert.Contains("`big.txt` is larger than 1 MiB", Of(plan, ("big.txt", new byte[SetLimits.FileBytes + 1])), StringComparison.Ordinal);
        Assert.Contains("larger than 4 MiB together", Of([plan, .. Enumerable.Range(1, 4).Select(file => ($"{file}.txt", new byte[SetLimits.FileBytes]))]), StringComparison.Ordinal);
        Assert.Contains("has 61 files", Of([plan, .. Enumerable.Range(1, 60).Select(file => ($"{file}.txt", new byte[1]))]), StringComparison.Ordinal);
    }

    private static PlanSet Whole(params (string Name, string Text)[] files) => PlanSet.Of("set", Files(files), null).Set!;

    private static string Refusal(string? plan, params (string Name, string Text)[] files) => Assert.Single(PlanSet.Of("set", Files(files), plan).Problems).Message;

    private static IReadOnlyList<SetFile> Files((string Name, string Text)[] files) => [.. files.Select(file => new SetFile(file.Name, Encoding.UTF8.GetBytes(file.Text)))];
}
