using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>Reads the stack of one hot body from the plan: its courses, a warm course below, cold courses and the build-up.</summary>
/// <param name="context">The plan.</param>
/// <param name="calculation">The computation that the inputs belong to.</param>
/// <param name="learnt">What was learnt of courses; null: nothing is taken over, which is what is assumed.</param>
internal sealed class MatReader(QuantityContext context, Calculation calculation, IReadOnlyList<LearntValues>? learnt = null)
{
    /// <summary>Least thickness that is modelled of the lowest layer, m; it goes on without end.</summary>
    private const double LowestLayer = 0.3;

    private readonly PlanView view = PlanView.Of(context);

    /// <summary>Reads the inputs; null when something is missing, which the calculation then says.</summary>
    public MatInputs? Read(PavingPass pass)
    {
        var courses = new List<MatCourse>();
        var warm = WarmBelow(pass);
        var time = 0.0;
        if (warm is not null)
        {
            time = ReadWarm(pass, warm, courses);
        }

        for (var i = 0; i < pass.Courses.Count; i++)
        {
            time += i > 0 ? PairQuantities.DelayOf(calculation, pass.Courses[i]) : 0;
            courses.Add(Course(pass.Courses[i], time, stated: null));
        }

        var below = Below(pass, warm);
        return calculation.Stopped is null && below.Count > 0
            ? new MatInputs(courses, warm is null ? 0 : warm.Courses.Count, below, calculation) { Film = Film(warm ?? pass), Base = MatBase.Read(context, calculation, below) }
            : null;
    }

    /// <summary>The class of a mix.</summary>
    internal static MaterialClass ClassOf(MixKind? kind) => kind switch
    {
        MixKind.StoneMastic => MaterialClass.StoneMastic,
        MixKind.Porous => MaterialClass.PorousAsphalt,
        MixKind.MasticAsphalt => MaterialClass.MasticAsphalt,
        _ => MaterialClass.AsphaltConcrete,
    };

    private PavingPass? WarmBelow(PavingPass pass)
    {
        var lowest = pass.Courses[0];
        return lowest.Laid == Laying.HotOnWarm
            ? view.Passes.FirstOrDefault(other => !ReferenceEquals(other, pass) && other.Courses.Any(course => PlanView.Same(course.Id, lowest.On)))
            : null;
    }

    /// <summary>Adds the warm courses and returns the time at which the hot body follows.</summary>
    private double ReadWarm(PavingPass pass, PavingPass warm, List<MatCourse> courses)
    {
        var lowest = pass.Courses[0];
        if (lowest is { Delay: null, Distance: null } && lowest.LowerTemperatureLowest?.Value is { } temperature)
        {
            var celsius = calculation.Stated("Tw", temperature, $"course:{lowest.Id}", "lower_temperature_lowest.value");
            courses.AddRange(warm.Courses.Select(course => Course(course, 0, celsius) with { Looseness = 1 }));
            return 0;
        }

        var time = 0.0;
        for (var i = 0; i < warm.Courses.Count; i++)
        {
            time += i > 0 ? PairQuantities.DelayOf(calculation, warm.Courses[i]) : 0;
            courses.Add(Course(warm.Courses[i], time, stated: null) with { Looseness = 1 });
        }

        return time + PairQuantities.DelayOf(calculation, lowest);
    }

    private MatCourse Course(Course course, double laidAt, double? stated)
    {
        var material = ClassOf(view.MixOf(course)?.Kind);
        var address = $"course:{course.Id}";
        var thickness = calculation.Stated("t", course.Thickness, address, "thickness");
        var density = CourseQuantities.MixDensity(calculation, course);
        var celsius = stated ?? LayingTemperature(course, address);
        var band = course.LayingTemperature;
        var (coldest, hottest) = Stray(course);
        calculation.Assumed(AssumptionIds.ConductivityOf(material), "k", address, null);
        calculation.Assumed(AssumptionIds.SpecificHeatOf(material), "c", address, null);
        calculation.Assumed(AssumptionIds.HeatRise, "dc/dT", address, null);
        LearntMat.Show(calculation, course);
        return LearntMat.Over(LearntMat.Of(learnt ?? [], course), new MatCourse(
            course.Id,
            thickness,
            density,
            material,
            celsius,
            stated ?? Math.Min(celsius, band?.Lowest?.Si ?? (celsius + coldest)),
            stated ?? Math.Max(celsius, band?.Highest?.Si ?? (celsius + hottest)),
            laidAt,
            Looseness(course, address)), context.Assumptions, stated is not null);
    }

    /// <summary>Density behind the screed over final density: stated, or assumed; its share of the time is carried into low and high.</summary>
    private double Looseness(Course course, string address)
    {
        var degree = view.MixOf(course)?.Density?.Degree;
        var final = degree is null
            ? calculation.Assumed(AssumptionIds.MixDegree, "D1", $"mix:{course.Mix}", null)
            : calculation.Stated("D1", degree, $"mix:{course.Mix}", "density.degree");
        var behind = course.DensityBehindScreed?.Value is { } stated
            ? calculation.Stated("D0", stated, address, "density_behind_screed.value")
            : calculation.Assumed(AssumptionIds.DegreeBehindScreed, "D0", address, null);
        return final > 0 ? Math.Clamp(behind / final, 0.5, 1) : 1;
    }

    /// <summary>Water below the lowest course, where that lies on the existing surface and the plan says that it is not dry.</summary>
    private MatFilm? Film(PavingPass lowest)
    {
        if (!ReferenceEquals(context.Plan.Courses[0], lowest.Courses[0]))
        {
            return null;
        }

        MatFilm? film = context.Plan.Existing?.Condition switch
        {
            Moisture.Damp => new(AssumptionIds.FilmDamp, IsIce: false),
            Moisture.Wet => new(AssumptionIds.FilmWet, IsIce: false),
            Moisture.Frozen => new(AssumptionIds.FilmIce, IsIce: true),
            _ => null,
        };
        if (film is not null)
        {
            calculation.Assumed(film.Assumption, "w", "existing", null);
        }

        return film;
    }

    /// <summary>Expected temperature behind the screed: stated, else delivery less the loss on the way to the mat.</summary>
    private double LayingTemperature(Course course, string address)
    {
        if (course.LayingTemperature?.Expected is null && view.MixOf(course)?.Delivery?.Expected is { } delivered)
        {
            return calculation.Stated("Td", delivered, $"mix:{course.Mix}", "delivery.expected")
                - calculation.Assumed(AssumptionIds.LayingLoss, "ΔT", address, new InputReference(address, "laying_temperature.expected"));
        }

        return calculation.Stated("T0", course.LayingTemperature?.Expected, address, "laying_temperature.expected");
    }

    /// <summary>How far the temperature may stray where no band is stated: by the usual spread, or by the range of the assumed loss.</summary>
    private (double Coldest, double Hottest) Stray(Course course)
    {
        var spread = context.Assumptions[AssumptionIds.LayingSpread];
        var loss = context.Assumptions[AssumptionIds.LayingLoss];
        return course.LayingTemperature?.Expected is null
            ? (Math.Min(spread.Low, loss.Number - loss.High), Math.Max(spread.High, loss.Number - loss.Low))
            : (spread.Low, spread.High);
    }

    private List<MatLayer> Below(PavingPass pass, PavingPass? warm)
    {
        var lowest = (warm ?? pass).Courses[0];
        var cold = context.Scope.Below.Concat(context.Plan.Courses.TakeWhile(course => !ReferenceEquals(course, lowest))).Reverse();
        List<MatLayer> layers =
        [
            .. cold.Select(course => new MatLayer(ClassOf(context.Scope.MixKindOf(course)), course.Thickness.Si)),
            .. BuildUp().Select(Frozen),
        ];
        foreach (var layer in layers)
        {
            calculation.Assumed(AssumptionIds.ConductivityOf(layer.Material), "k", "existing", null);
        }

        if (layers.Exists(layer => layer.IsFrozen))
        {
            calculation.Assumed(AssumptionIds.FrozenMoisture, "w", "existing", null);
        }

        return layers;
    }

    /// <summary>Crushed rock of a frozen existing surface is frozen too.</summary>
    private MatLayer Frozen(MatLayer layer) => context.Plan.Existing?.Condition == Moisture.Frozen
        && layer.Material is MaterialClass.CrushedRockMoist or MaterialClass.CrushedRockDry
            ? layer with { Material = MaterialClass.CrushedRockFrozen }
            : layer;

    private List<MatLayer> BuildUp()
    {
        var existing = context.Scope.Ground;
        return existing?.Layers is { Count: > 0 } stated ? StatedBuildUp(stated) : AssumedBuildUp(existing?.Surface);
    }

    private List<MatLayer> StatedBuildUp(IReadOnlyList<ExistingLayer> stated)
    {
        var deck = context.Scope.Ground!.Surface == ExistingSurface.BridgeDeck;
        var layers = new List<MatLayer>();
        for (var i = 0; i < stated.Count; i++)
        {
            var last = i == stated.Count - 1;
            if (stated[i].Material is not { } material)
            {
                calculation.Miss("existing", $"layers.{stated[i].Id}.material");
                continue;
            }

            var thickness = stated[i].Thickness is null && last && !deck
                ? LowestLayer
                : calculation.Stated("z", stated[i].Thickness, "existing", $"layers.{stated[i].Id}.thickness");
            layers.Add(new MatLayer(ClassOf(material, deck && last), thickness));
        }

        return layers;
    }

    private List<MatLayer> AssumedBuildUp(ExistingSurface? surface)
    {
        switch (surface)
        {
            case null:
                calculation.Miss("existing", "surface");
                return [];
            case ExistingSurface.BridgeDeck:
                calculation.Miss("existing", "layers");
                return [];
            case ExistingSurface.Granular:
                return [new MatLayer(MaterialClass.CrushedRockMoist, LowestLayer, IsAssumed: true)];
            case ExistingSurface.Soil:
                return [new MatLayer(MaterialClass.Soil, LowestLayer)];
            default:
                var thickness = calculation.Assumed(AssumptionIds.BuildUpThickness, "z", "existing", new InputReference("existing", "layers"));
                var bound = surface == ExistingSurface.Concrete ? MaterialClass.Concrete : MaterialClass.ExistingAsphalt;
                return [new MatLayer(bound, thickness, IsAssumed: true), new MatLayer(MaterialClass.CrushedRockMoist, LowestLayer, IsAssumed: true)];
        }
    }

    private static MaterialClass ClassOf(LayerMaterial material, bool deck) => material switch
    {
        LayerMaterial.Asphalt => MaterialClass.ExistingAsphalt,
        LayerMaterial.Concrete => deck ? MaterialClass.ConcreteDeck : MaterialClass.Concrete,
        LayerMaterial.CrushedRockDry => MaterialClass.CrushedRockDry,
        LayerMaterial.CrushedRockMoist => MaterialClass.CrushedRockMoist,
        LayerMaterial.CrushedRockFrozen => MaterialClass.CrushedRockFrozen,
        LayerMaterial.Soil => MaterialClass.Soil,
        _ => MaterialClass.SteelDeck,
    };
}
