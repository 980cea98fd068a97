using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether the editions that govern the work hold on the day of the shift.</summary>
internal static class GoverningEdition
{
    /// <summary>Whether each governing title is named in one edition only.</summary>
    public static Answer IsOne(QuantityContext context, Element element)
    {
        var twice = context.Plan.Documents.Where(document => document.Kind is DocumentKind.GoverningCode or DocumentKind.Specification && Answers.Given(document.Title))
            .GroupBy(document => document.Title!.Trim(), StringComparer.OrdinalIgnoreCase)
            .FirstOrDefault(same => same.Select(document => document.Edition?.Trim()).Distinct(StringComparer.OrdinalIgnoreCase).Count() > 1);
        return Answers.Follows(twice is null, new InputReference("plan", twice is null ? "documents" : $"documents.{twice.Last().Id}.edition"));
    }

    /// <summary>No when one is outside its stated days; yes when each has a last day or was seen in force; otherwise not known.</summary>
    public static Answer Holds(QuantityContext context, Element element)
    {
        Document[] documents = [.. context.Plan.Documents.Where(document => document.Kind is DocumentKind.GoverningCode or DocumentKind.Specification)];
        if (documents.Length == 0)
        {
            return Answer.Missing(new InputReference("plan", "documents"));
        }

        if (context.Plan.Shift?.Date is not { } day)
        {
            return Answer.Missing(new InputReference("shift", "date"));
        }

        if (Array.Find(documents, document => day < document.ValidFrom || day > document.ValidTo) is { } outside)
        {
            return Answers.Follows(flag: false, new InputReference("plan", $"documents.{outside.Id}.{(day < outside.ValidFrom ? "valid_from" : "valid_to")}"));
        }

        InputReference[] silent = [.. documents.Where(document => document.ValidTo is null && document.SeenInForce is null)
            .Select(document => new InputReference("plan", $"documents.{document.Id}.seen_in_force"))];
        return silent.Length > 0 ? Answer.Missing(silent) : Answers.Follows(flag: true, new InputReference("plan", "documents"));
    }
}
