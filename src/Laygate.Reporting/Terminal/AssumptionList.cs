using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;

namespace Laygate.Reporting.Terminal;

/// <summary>Assumptions that were used: first those that a statement in the plan would replace and those that were learnt, then the properties that no plan states.</summary>
internal sealed class AssumptionList(Page page, TerminalSettings settings)
{
    public void Write(IReadOnlyList<AssumptionUse> uses)
    {
        if (uses.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, "Assumed")]);
        foreach (var use in uses.Where(use => settings.All || use.StandsFor is not null || AssumptionIds.IsLearnt(use.Id)))
        {
            WriteOne(use);
        }

        var folded = settings.All ? 0 : uses.Count(use => use.StandsFor is null && !AssumptionIds.IsLearnt(use.Id));
        if (folded > 0)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Quiet, $"{folded.ToString(CultureInfo.InvariantCulture)} {(folded == 1 ? "property" : "properties")} of materials and air that no plan states (--all lists them)")]);
        }
    }

    private void WriteOne(AssumptionUse use)
    {
        var value = Figures.WithUnit(Rounding.Text(use.Number, RoundingKind.Exact, 0), use.Unit);
        var name = PlainText.Show(use.Id).Replace('_', ' ').Replace('.', ' ');
        page.Flow(2, 4, [new TextSpan(TextStyle.Plain, $"{name} {value} for {PlainText.Show(use.Address)}; {SourceWords.Of(use.Evidence)}: {PlainText.Show(use.Source)}")]);
        if (use.StandsFor is { } input)
        {
            page.Flow(4, 6, [new TextSpan(TextStyle.Quiet, $"state `{Names.Of(input)}` to replace it")]);
        }
    }
}
