using System.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Verification;

/// <summary>The page of the formulas that verification cases may call.</summary>
public static class FormulaPage
{
    /// <summary>The page as Markdown.</summary>
    /// <param name="formulas">Formulas.</param>
    public static string Markdown(IReadOnlyList<VerifiedFormula> formulas)
    {
        var text = new StringBuilder();
        text.Append("# Formulas of verification cases\n\n");
        text.Append("This page is written by the program: `LAYGATE_APPROVE=1 dotnet test tests/Laygate.ConformanceTests --filter VerificationManual`. ");
        text.Append("A case calls a formula by its name and gives its inputs by theirs ([how](README.md)); `?` marks those that may be left out, `[ ]` lists. Where a publication has the same thing under another name, the cases in the folders beside this page show which formula it is.\n\n");
        text.Append("| formula | gives | inputs |\n|---|---|---|\n");
        foreach (var formula in formulas)
        {
            text.Append($"| `{formula.Name}` | {formula.Result}{Units(formula.Units)} | {string.Join("; ", formula.Inputs.Select(Input))} |\n");
        }

        return text.ToString();
    }

    private static string Input(VerifiedFormulaInput input) =>
        $"`{input.Name}`{(input.IsRequired ? string.Empty : "?")}{(input.IsList ? " [ ]" : string.Empty)} {(input.What is { } what ? what + Units(input.Allowed) : "one of " + string.Join(", ", input.Allowed))}";

    private static string Units(IReadOnlyList<string> units) => units.Count == 0 ? string.Empty : $" ({string.Join(", ", units)})";
}
