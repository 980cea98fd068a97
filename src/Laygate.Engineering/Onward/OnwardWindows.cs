using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Onward;

/// <summary>How long what is laid now, and at the end, can be densified, solved with the weather and the temperatures of tonight, and which passes come within it.</summary>
/// <param name="tonight">The plan in the weather of tonight.</param>
/// <param name="rolled">The same with the rollers that are left, at the speed that they follow.</param>
/// <param name="lost">Phases that lost a roller.</param>
internal sealed class OnwardWindows(QuantityContext tonight, QuantityContext rolled, IReadOnlyList<PhaseLeft> lost)
{
    /// <summary>The windows of a course; empty where weather, times or mix do not tell them.</summary>
    /// <param name="id">Id of the course.</param>
    /// <param name="moments">When it is laid.</param>
    public IReadOnlyList<WindowAt> Of(string id, IEnumerable<DateTimeOffset> moments)
    {
        if (tonight.Plan.Courses.FirstOrDefault(course => PlanView.Same(course.Id, id)) is not { } course)
        {
            return [];
        }

        var calculation = new Calculation(tonight);
        var pass = PlanView.Of(tonight).PassOf(course);
        MatLimits.Cessation(calculation, course);
        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is not null || new MatWeatherReader(tonight, new Calculation(tonight)).Read(pass, MatQuestion.Fast) is not { } weather)
        {
            return [];
        }

        var cooling = MatCooling.Of(tonight).While(pass);
        return [.. moments.Distinct().Where(moment => weather.Parts.Any(part => part[0] <= moment && moment <= part[^1]))
            .Select(moment => (At: moment, cooling.BandAt(weather.At(moment), $"window {id}")?.Ends))
            .Where(one => one.Ends is not null).Select(one => new WindowAt(one.At, one.Ends!.Value.Expected, one.Ends.Value.Low, one.Ends.Value.High))];
    }

    /// <summary>Time from the screed of a course to its last densifying pass with the rollers that are left, s; null where the plan does not tell it.</summary>
    public double? RolledWithin(string id) => PlanView.Of(rolled).Of(ElementKind.Course, id) is { } element ? Value(element, "course.last_densifying_pass") : null;

    /// <summary>Passes of each densifying phase within a window; empty where no roller is lost or the plan does not tell when they come.</summary>
    /// <param name="id">Id of the course.</param>
    /// <param name="window">The window.</param>
    public IReadOnlyList<PassesInWindow> Passes(string id, WindowAt window)
    {
        var phases = (rolled.Plan.Rolling?.Phases ?? []).Where(phase => phase.Kind is PhaseKind.Initial or PhaseKind.Main).ToList();
        if (lost.Count == 0 || RolledWithin(id) is not { } last || phases.Select(phase => Of(phase, "phase.done_by")).Max() is not { } done)
        {
            return [];
        }

        // The phases count from the last screed; a course below it was laid earlier by the difference.
        var delay = last - done;
        return [.. phases.Select(phase => Within(phase, window.Seconds - delay, window.Low - delay)).OfType<PassesInWindow>()];
    }

    // The passes share the time of the zone evenly.
    private PassesInWindow? Within(Phase phase, double expected, double low)
    {
        if (phase.Passes is not (> 0 and var planned) || Of(phase, "phase.zone_passed") is not { } passed || Of(phase, "phase.last_pass_from") is not { } from || Of(phase, "phase.done_by") is not { } done)
        {
            return null;
        }

        var start = passed - (planned * (passed - from));
        var without = lost.Any(one => one.Rollers == 0 && PlanView.Same(one.Phase, phase.Id));
        int Made(double until) => without || done <= start ? 0 : (int)Math.Clamp(Math.Floor((planned * (until - start) / (done - start)) + 1e-9), 0, planned);
        return new PassesInWindow(phase.Id, planned, Made(expected), Made(low));
    }

    private double? Of(Phase phase, string quantity) => rolled.Elements.Find($"phase:{phase.Id}") is { } element ? Value(element, quantity) : null;

    private double? Value(Element element, string quantity) => (rolled.Get(quantity, element).Value as NumberValue)?.Si;
}
