using System.Text;
using Laygate.Checking;
using Laygate.Checking.Scaffolding;
using Laygate.Reading.Parts;

namespace Laygate.UnitTests.Checking.Scaffolding;

/// <summary>The empty files of a record are laid out in the units and over the width of the plan.</summary>
public sealed class RecordScaffoldTests
{
    // By hand: 3 m in columns of 0.5 m are six, the first 0.25 m and the last 2.75 m from the edge; 12 ft in columns of 2 ft are six, from 1 ft to 11 ft.
    [Theory]
    [InlineData("40 mm", "3 m", "0.25,0.75,1.25,1.75,2.25,2.75", "header_unit: m ", "unit: °C")]
    [InlineData("1.5 in", "12 ft", "1,3,5,7,9,11", "header_unit: ft ", "unit: °F")]
    public void A_thermal_profile_has_a_column_for_each_place_across_the_mat(string thickness, string width, string columns, string headers, string degrees)
    {
        var plan = $"format: 1\nplan: {{ id: p, stage: concept }}\ncourses: [{{ id: c, mix: m, thickness: {thickness} }}]\nruns: [{{ id: r, width: {width} }}]\n";
        var (files, problems) = RecordScaffold.For(new PlanTools(), "p.yaml", Encoding.UTF8.GetBytes(plan), new NoPartFiles());
        Assert.Empty(problems);
        var texts = files.ToDictionary(file => file.Path, file => file.Text, StringComparer.Ordinal);
        Assert.EndsWith($",{columns}\r\n", texts["thermal-profile.csv"], StringComparison.Ordinal);
        Assert.DoesNotContain("grid", texts["thermal-profile.csv"], StringComparison.Ordinal);
        Assert.Contains(headers, texts["record.yaml"], StringComparison.Ordinal);
        Assert.Contains(degrees, texts["record.yaml"], StringComparison.Ordinal);
    }
}
