using Laygate.Engineering.Mat;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Onward;

/// <summary>How long what is laid now, and at the end, can be densified, solved with the weather and the temperatures of tonight.</summary>
internal sealed class OnwardWindows(QuantityContext tonight)
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

    /// <summary>Time from the screed of a course to its last densifying pass, s; null where the plan does not tell it.</summary>
    public double? RolledWithin(string id) =>
        PlanView.Of(tonight).Of(ElementKind.Course, id) is { } element && tonight.Get("course.last_densifying_pass", element).Value is NumberValue { Si: var within } ? within : null;
}
