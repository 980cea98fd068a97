using Laygate.Model.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.UnitTests.Checking.Scaffolding;

namespace Laygate.UnitTests.Reading.RuleFiles;

/// <summary><c>laygate.yaml</c>: what is read, and that it can only make a check stricter.</summary>
public sealed class SettingsFileTests
{
    [Fact]
    public void Settings_are_read_as_written()
    {
        var (settings, problems) = SettingsFile.Read("laygate.yaml", SmallPack.Bytes("plans: [a.yaml]\nrules: [de, own]\ndepartures: [d.yaml]\nfail_on: warn\nstage: release\n"));
        Assert.Empty(problems);
        Assert.Equal(["a.yaml"], settings!.Plans);
        Assert.Equal(["de", "own"], settings.Rules);
        Assert.Equal(["d.yaml"], settings.Departures);
        Assert.Equal((true, Stage.Release), (settings.FailOnWarn, settings.Stage));
    }

    [Theory]
    [InlineData("fail_on: none\n", 1, 10)]
    [InlineData("rules: [de]\nskip: [LAY-001]\n", 2, 1)]
    [InlineData("rules: de\n", 1, 8)]
    [InlineData("stage: realese\n", 1, 8)]
    [InlineData("stage: release\n---\nstage: concept\n", 3, 1)]
    public void What_would_make_it_laxer_or_means_nothing_is_refused(string text, int line, int column)
    {
        var (settings, problems) = SettingsFile.Read("laygate.yaml", SmallPack.Bytes(text));
        Assert.Null(settings);
        var problem = Assert.Single(problems);
        Assert.Equal((line, column), (problem.Position!.Line, problem.Position.Column));
    }
}
