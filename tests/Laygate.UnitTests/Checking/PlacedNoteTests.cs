using System.Text;
using Laygate.Checking;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Parts;
using Laygate.UnitTests.Reporting;

namespace Laygate.UnitTests.Checking;

/// <summary>A remark that names another place of the plan says its line.</summary>
public sealed class PlacedNoteTests
{
    private const string Plan = """
        format: 1
        plan: { id: p, stage: concept }
        courses:
          - { id: lower, mix: m, thickness: 80 mm }
          - id: upper
            mix: m
            thickness: 45 mm
        """;

    [Theory]
    [InlineData("course:upper/thickness", "course:upper/thickness (line 7)")]
    [InlineData("course:lower/mix", "course:lower/mix (line 4)")]
    [InlineData("course:upper", "course:upper (line 5)")]
    public void It_is_the_line_of_the_key_or_of_the_element(string at, string shown)
    {
        var read = new PlanTools().Reader.Read("p.yaml", Encoding.UTF8.GetBytes(Plan), new NoPartFiles());
        var finding = Samples.Report().Findings[0] with { Notes = [new Note("any", [new NoteArgument(NoteArgument.At, at)]), new Note("other", [new NoteArgument("rule", at)])] };
        var placed = PlanCheck.Placed(read.Plans[0].Positions, finding).Notes;
        Assert.Equal([shown, at], placed.Select(note => Assert.Single(note.Arguments).Text), StringComparer.Ordinal);
    }
}
