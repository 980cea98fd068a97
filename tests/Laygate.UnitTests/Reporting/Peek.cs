using Laygate.Reporting.Terminal;
namespace Laygate.UnitTests.Reporting;
public class Peek
{
    [Fact]
    public void Show()
    {
        foreach (var w in new[] { 60, 80, 100 })
            File.WriteAllLines($"/tmp/peek-{w}.txt", TerminalReport.Lines([Samples.Result()], new TerminalSettings(w, w == 100)).Select(l => l.Text));
    }
}
