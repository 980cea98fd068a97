using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using static Laygate.ConformanceTests.Schema.PlanSchemaFile;

namespace Laygate.ConformanceTests.Schema;

/// <summary>Every plan in the repository can be read, also those that rule cases start from.</summary>
public class ShippedPlanTests
{
    public static TheoryData<string> Plans =>
    [
        .. PlanPaths
            .Concat(Directory.EnumerateFiles(Path.Combine(Root, "rules", "bases"), "*.yaml").Order(StringComparer.Ordinal))
            .Select(path => Path.GetRelativePath(Root, path)),
    ];

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_shipped_plan_is_read_without_a_problem(string path)
    {
        var document = Read(File.ReadAllText(Path.Combine(Root, path)));
        if (document.Root is MapToken map && map.Find("job") is not null)
        {
            Assert.Empty(new PlanReader().Read(path, File.ReadAllBytes(Path.Combine(Root, path)), new NoPartFiles()).Problems);
            return;
        }

        Assert.Empty(PlanShape.Check(document, Loaded));
        var mapping = PlanMapper.Map(document);
        Assert.Empty(mapping.Problems);
        Assert.Empty(PlanConsistency.Check(mapping.Plan!, mapping.Positions));
    }
}
