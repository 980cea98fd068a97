using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Outlook;
using Laygate.Rules.Remedies;

namespace Laygate.ConformanceTests.Remedies;

/// <summary>A check that nobody waits for any more ends soon, also inside the searches that use several threads.</summary>
public sealed class CallOffTests
{
    private const string Moor = "examples/moor-road-thin-overlay.yaml";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_search_that_is_called_off_says_so_and_nothing_else(bool remedies)
    {
        using var off = new CancellationTokenSource();
        var book = Repository.Bound();
        var plan = PlanMapper.Map(YamlReader.Read(Repository.Bytes(Moor)).Documents[0]).Plan!;
        var context = new QuantityContext(plan, LaygateQuantities.Catalogue(), new AssumptionSet(LaygateAssumptions.All), 1) { Cancel = off.Token, IsQuick = true }.Remembering();
        var settings = new EvaluationSettings { File = Moor, CheckedOn = Repository.CheckDate };
        var report = Evaluator.Evaluate(book, context, settings);

        // Called off while the search makes its first changed plan, or before it judges its first hour.
        bool IsConsistent(Laygate.Model.Plans.Plan changed)
        {
            off.Cancel();
            return PlanConsistency.Check(changed).Count == 0;
        }

        if (!remedies)
        {
            off.Cancel();
        }

        Assert.ThrowsAny<OperationCanceledException>(() => remedies
            ? RemedySearch.AddTo(report, book, context, settings, IsConsistent)
            : OutlookSearch.AddTo(report, book, context, settings));
    }
}
