using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Reads a shift out of a plan; what is missing or cannot be simulated is noted in the calculation.</summary>
internal sealed class ShiftReader(Calculation calculation)
{
    private readonly QuantityContext context = calculation.Context;
    private readonly PlanView view = PlanView.Of(calculation.Context);

    /// <summary>Reads the shift.</summary>
    /// <returns>The shift; null where the calculation says why there is none.</returns>
    public ShiftModel? Read()
    {
        if (view.Passes.Count != 1)
        {
            calculation.Block(AbsenceReason.NotComputable, Counted(SimulationNotes.SeveralPasses, view.Passes.Count));
            return null;
        }

        var courses = view.Passes[0].Courses;
        if (courses.Count > 2)
        {
            calculation.Block(AbsenceReason.NotComputable, Counted(NoteIds.TooManyMixes, courses.Count));
            return null;
        }

        var model = Read(courses);
        return calculation.Stopped is null && IsPossible(model) ? model : null;
    }

    /// <summary>Notes that the shift is too large to be simulated.</summary>
    public static void IsTooLarge(Calculation calculation) => calculation.Block(AbsenceReason.NotComputable, new Note(SimulationNotes.TooLarge,
    [
        new NoteArgument("hours", null, ShiftSimulator.LongestTime / 3600, "h"), new NoteArgument("loads", null, ShiftSimulator.MostLoads, string.Empty),
    ]));

    private ShiftModel Read(IReadOnlyList<Course> courses)
    {
        var stretches = new StretchReader(calculation, view).Read(courses);
        var tonnages = courses.Select((course, i) => (course.Mix, Mass: stretches.Sum(stretch => stretch.Length * stretch.PerMetre[i])))
            .GroupBy(course => course.Mix, StringComparer.Ordinal)
            .ToDictionary(mix => mix.Key, mix => mix.Sum(course => course.Mass), StringComparer.Ordinal);
        var spread = calculation.Assumed(SimulationAssumptions.ServiceSpread, "cv", "supply", null);
        var haul = new HaulReader(calculation);
        var trucks = haul.Read(tonnages, spread);
        var pavers = Pavers(courses);
        var unloading = Unloading(courses, pavers, spread);
        return new ShiftModel
        {
            Duration = calculation.Quantity("T", "shift.duration", context.Elements.Find("shift")),
            Speed = pavers.Count == 0 ? double.NaN : pavers.Distinct().Min(paver => PaverQuantities.SpeedOf(calculation, paver)),
            Stretches = stretches,
            Buffers = new BufferReader(calculation, unloading).Read(courses, pavers),
            Lines = haul.Lines,
            Trucks = trucks,
            Unloading = unloading,
            Pauses = Pauses(pavers),
            Dispatch = Sending(),
            SmallestLoad = calculation.Assumed(SimulationAssumptions.SmallestLoad, "q", "supply", null),
            LoadStep = calculation.Assumed(SimulationAssumptions.LoadStep, "step", "supply", null),
            BadDay = calculation.Assumed(SimulationAssumptions.BadDayPoint, "p", "supply", null),
        };
    }

    /// <summary>How loads are sent; assumed, and listed so, where the plan does not say it.</summary>
    private Dispatch Sending()
    {
        if (context.Plan.Supply?.Dispatch is { } stated)
        {
            calculation.Show("dispatch", "dispatch", "supply", Words.Of(stated));
            return stated;
        }

        return calculation.Assumed(SimulationAssumptions.ByTimetable, "dispatch", "supply", new InputReference("supply", "dispatch")) >= 0.5
            ? Dispatch.Timetable
            : Dispatch.AsLoaded;
    }

    /// <summary>The paver of each course; empty where one is missing.</summary>
    private IReadOnlyList<Paver> Pavers(IReadOnlyList<Course> courses)
    {
        var pavers = new List<Paver>();
        foreach (var course in courses)
        {
            var all = view.RunsOf(course).Select(run => view.PaverOf(course, run)).Append(null).Distinct().OfType<Paver>().ToList();
            if (all.Count > 1)
            {
                calculation.Block(AbsenceReason.NotComputable, Note.Of(SimulationNotes.SeveralPavers, ("course", course.Id)));
            }
            else if (all.Count == 0)
            {
                calculation.Miss("plan", "pavers");
            }

            pavers.AddRange(all.Take(1));
        }

        return pavers.Count == courses.Count ? pavers : [];
    }

    private ShiftUnloading Unloading(IReadOnlyList<Course> courses, IReadOnlyList<Paver> pavers, double spread)
    {
        if (context.Plan.Supply?.Feeder is { } feeder)
        {
            var address = $"feeder:{feeder.Id}";
            var rate = calculation.Stated("Q", feeder.Rate, address, "rate");
            var exchange = calculation.StatedOr(AssumptionIds.Exchange, "e", feeder.Exchange, address, "exchange");
            var changes = courses.Count == 2 && !PlanView.Same(courses[0].Mix, courses[1].Mix);
            var changeover = changes ? calculation.Stated("c", feeder.Changeover, address, "changeover") : 0;
            return new ShiftUnloading(true, rate, TimeSpread.Lognormal(exchange, spread), changeover, feeder.UnloadingInParts == true);
        }

        var paver = pavers.Count > 0 ? $"paver:{pavers[0].Id}" : "plan";
        return new ShiftUnloading(
            false,
            calculation.Assumed(SimulationAssumptions.TippingRate, "Q", paver, null),
            TimeSpread.Lognormal(calculation.Assumed(AssumptionIds.Exchange, "e", paver, null), spread),
            0,
            InParts: false);
    }

    private ShiftPause[] Pauses(IReadOnlyList<Paver> pavers) =>
    [
        .. pavers.Distinct().SelectMany(paver => paver.Stops.Select(stop => new ShiftPause(
            calculation.Stated("after", stop.After, $"paver:{paver.Id}", $"stops.{stop.Id}.after"),
            calculation.Stated("length", stop.Length, $"paver:{paver.Id}", $"stops.{stop.Id}.length")))).OrderBy(pause => pause.After),
    ];

    private bool IsPossible(ShiftModel model)
    {
        switch (ShiftSimulator.Problem(model))
        {
            case ShiftProblem.None:
                return true;
            case ShiftProblem.TooLarge:
                IsTooLarge(calculation);
                return false;
            default:
                calculation.Block(AbsenceReason.OutsideRange, Note.Of(NoteIds.OutsideFormula, ("quantity", "shift.stop_chance")));
                return false;
        }
    }

    private static Note Counted(string id, int count) => new(id, [new NoteArgument("count", null, count, string.Empty)]);
}
