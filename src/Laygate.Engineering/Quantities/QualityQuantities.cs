using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Tests, hold points and overhead lines.</summary>
internal static class QualityQuantities
{
    private static readonly Define Test = new(ElementKind.Test);
    private static readonly Define HoldPoint = new(ElementKind.HoldPoint);
    private static readonly Define Line = new(ElementKind.OverheadLine);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Test.StatedWord<Test, TestKind>("kind", "kind", "What the test examines.", test => test.Kind),
        Test.Flag("cored", "Whether the test is made on cores.", (_, e) => Answers.Follows(((Test)e.Subject!).Cores is not null, new InputReference(e.Address, "cores"))),
        Test.StatedFlag<Test>("cores_mat_cold", "cores.mat_cold", "Whether the mat is cold when the cores are taken.", test => test.Cores?.MatCold),
        Test.StatedFlag<Test>("same_mix_and_machines", "same_mix_and_machines", "Whether a trial length has the mixes and machines of this plan.", test => test.SameMixAndMachines),
        Test.Number("time_before_shift", Shape.Days, "Time from the trial length to the day of the shift.", BeforeShift, new Method(
            "Δt = date of the shift − date of the trial", "definition of the quantity", "whole days; negative when the trial comes later")),
        Test.Presence("complete", "Where, when and by whom it is tested.", (_, e) => Complete((Test)e.Subject!)),
        HoldPoint.Presence("complete", "Criterion, evidence, owner and who releases.", (_, e) => Complete((HoldPoint)e.Subject!)),
        Line.Stated<OverheadLine>("voltage", Shape.Voltage, "voltage", "Voltage of the line.", line => line.Voltage),
        Line.Stated<OverheadLine>("height", Shape.Length, "height", "Height of the lowest conductor above the surface.", line => line.Height),
    ];

    private static Answer BeforeShift(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var done = ((Test)element.Subject!).Done;
        if (done is null)
        {
            calculation.Miss(element.Address, "done");
        }

        if (context.Plan.Shift?.Date is null)
        {
            calculation.Miss("shift", "date");
        }

        const double secondsPerDay = 86400;
        var days = context.Plan.Shift?.Date?.DayNumber - done?.DayNumber;
        return calculation.Result("test.time_before_shift", "Δt", "Δt = date of the shift − date of the trial", days * secondsPerDay);
    }

    /// <summary>How complete a test is.</summary>
    internal static Answer Complete(Test test) => Answers.Fields(
        new InputReference($"test:{test.Id}", string.Empty),
        ("where", Answers.Given(test.Where)),
        ("when", Answers.Given(test.When)),
        ("by", Answers.Given(test.By)));

    /// <summary>How complete a hold point is.</summary>
    internal static Answer Complete(HoldPoint point) => Answers.Fields(
        new InputReference($"hold-point:{point.Id}", string.Empty),
        ("criterion", Answers.Given(point.Criterion)),
        ("evidence", Answers.Given(point.Evidence)),
        ("owner", Answers.Given(point.Owner)),
        ("released_by", Answers.Given(point.ReleasedBy)));
}
