using System.Globalization;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Whether what a plan rests on was known when it was signed and laid, and how old it is by then.</summary>
internal static class DatesOfEvidence
{
    private const double Day = 86400;
    private const string Age = "Δt = date of the shift − date of the evidence";

    private static readonly Define Plan = new(ElementKind.Plan);
    private static readonly Define Course = new(ElementKind.Course);
    private static readonly Method AgeMethod = new(Age, Formulas.Sources.Definition, "whole days; negative when the evidence comes later");

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Plan.Flag("evidence_dated", "Whether the plan dates anything on which it rests.", (c, _) => Answers.Follows(Dated(c.Plan).Any(), new InputReference("plan", "documents"))),
        Plan.Flag("evidence_in_time", "Whether everything on which the plan rests is dated before the shift, and what it knows from trials before it was signed.", InTime),
        Plan.Flag("edition_seen", "Whether somebody saw a governing edition in force, with the day.", (c, _) => Answers.Follows(Seen(c.Plan).Any(), new InputReference("plan", "documents"))),
        Plan.Number("edition_age", Shape.Days, "Time from the day on which a governing edition was last seen in force to the shift: the longest.", EditionAge, AgeMethod),
        Course.Flag("density_dated", "Whether the density behind the screed comes from a trial with a date.", (_, e) => Answers.Follows(
            (e.Subject as Course)?.DensityBehindScreed is { Evidence: DensityEvidence.Trial, Date: not null }, new InputReference(e.Address, "density_behind_screed.date"))),
        Course.Number("density_age", Shape.Days, "Time from the trial that gave the density behind the screed to the shift.", DensityAge, AgeMethod),
    ];

    private static IEnumerable<(InputReference Input, DateOnly Date, bool KnownWhenSigned)> Dated(Plan plan) =>
    [
        .. plan.Identity.Date is { } date ? [(new InputReference("plan", "plan.date"), date, false)] : Array.Empty<(InputReference, DateOnly, bool)>(),
        .. plan.Courses.Where(course => course.DensityBehindScreed?.Date is not null).Select(course => (
            new InputReference($"course:{course.Id}", "density_behind_screed.date"), course.DensityBehindScreed!.Date!.Value, true)),
        .. plan.Tests.Where(test => test is { Reached: not null, Done: not null }).Select(test => (new InputReference($"test:{test.Id}", "done"), test.Done!.Value, true)),
        .. plan.Documents.Where(document => document.SeenInForce is not null).Select(document => (
            new InputReference("plan", $"documents.{document.Id}.seen_in_force"), document.SeenInForce!.Value, false)),
    ];

    private static IEnumerable<Document> Seen(Plan plan) =>
        plan.Documents.Where(document => document.Kind is DocumentKind.GoverningCode or DocumentKind.Specification && document.SeenInForce is not null);

    // A result that is stated was known when the last signature was given, or the signature is to another text.
    private static Answer InTime(QuantityContext context, Element element)
    {
        if (context.Plan.Shift?.Date is not { } shift)
        {
            return Answer.Missing(new InputReference("shift", "date"));
        }

        var identity = context.Plan.Identity;
        var signed = new[] { identity.Date, identity.Prepared?.Date, identity.Checked?.Date, identity.Approved?.Date }.Max();
        foreach (var (input, date, known) in Dated(context.Plan))
        {
            if (date > shift)
            {
                return Late(input, date, shift, "the day of the shift");
            }

            if (known && date > signed)
            {
                return Late(input, date, signed.Value, "the last day on which the plan was dated or signed");
            }
        }

        return Answers.Follows(flag: true, new InputReference("plan", "documents"));
    }

    private static Answer Late(InputReference input, DateOnly date, DateOnly limit, string what) => Answers.Follows(flag: false, input) with
    {
        Note = Note.Of(NoteIds.DatedAfter, (NoteArgument.At, $"{input.Address}/{input.Key}"), ("date", Written(date)), ("limit", Written(limit)), ("what", what)),
    };

    private static Answer EditionAge(QuantityContext context, Element element)
    {
        var oldest = Seen(context.Plan).MinBy(document => document.SeenInForce);
        return Since(context, oldest?.SeenInForce, new InputReference("plan", oldest is null ? "documents" : $"documents.{oldest.Id}.seen_in_force"), "plan.edition_age");
    }

    private static Answer DensityAge(QuantityContext context, Element element) => Since(
        context, (element.Subject as Course)?.DensityBehindScreed?.Date, new InputReference(element.Address, "density_behind_screed.date"), "course.density_age");

    private static Answer Since(QuantityContext context, DateOnly? date, InputReference input, string quantity)
    {
        var calculation = new Calculation(context);
        if (date is null)
        {
            calculation.Miss([input]);
        }

        if (context.Plan.Shift?.Date is null)
        {
            calculation.Miss("shift", "date");
        }

        return calculation.Result(quantity, "Δt", Age, (context.Plan.Shift?.Date?.DayNumber - date?.DayNumber) * Day) with { Input = input };
    }

    private static string Written(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
