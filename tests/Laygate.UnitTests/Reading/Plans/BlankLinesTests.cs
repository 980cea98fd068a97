using System.Text;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;

namespace Laygate.UnitTests.Reading.Plans;

/// <summary>Many blanks are told in one sentence: lines that follow each other by the first and the last of them.</summary>
public sealed class BlankLinesTests
{
    [Fact]
    public void Lines_that_follow_each_other_are_named_together()
    {
        var text = "format: 1\nplan: { id: p, stage: concept }\nsite:\n  conditions:\n"
            + string.Concat(Enumerable.Range(0, 20).Select(number => $"    k{number}: TO FILL IN\n"))
            + "  use: street\n  traffic: TO FILL IN\n  open_speed: TO FILL IN # two\n";
        var problems = new PlanReader().Read("p.yaml", Encoding.UTF8.GetBytes(text), new NoPartFiles()).Problems;
        Assert.Contains(problems, problem => problem.Message is "22 places are still blanks, on lines 5 to 24, 26 to 27." && problem.Position!.Line == 5);
    }
}
