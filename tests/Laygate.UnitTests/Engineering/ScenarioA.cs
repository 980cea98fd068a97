using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;
using PlanRolling = Laygate.Model.Plans.Rolling;
using PlanSupply = Laygate.Model.Plans.Supply;

namespace Laygate.UnitTests.Engineering;

/// <summary>Scenario A: two courses hot-on-hot at night. Place and figures are invented; what must follow from them is derived where it is expected.</summary>
internal static class ScenarioA
{
    public static Plan Plan { get; } = new()
    {
        Format = 1,
        Identity = new Identity { Id = "quay-road", Stage = Stage.Release },
        Location = new Location { Latitude = M<Angle>(41.2, "°"), Longitude = M<Angle>(0, "°") },
        Shift = new Shift
        {
            Date = new DateOnly(2027, 5, 14),
            Start = new TimeOnly(21, 15),
            End = new TimeOnly(4, 5),
            Zone = TimeSpan.FromHours(2),
        },
        Weather = new Weather { WindHeight = Metres(10), Exposure = Exposure.Open, Hours = [.. Hours()] },
        Existing = new Existing
        {
            Surface = ExistingSurface.Milled,
            Condition = Moisture.Dry,
            Layers =
            [
                new ExistingLayer { Id = "asphalt", Material = LayerMaterial.Asphalt, Thickness = Mm(120) },
                new ExistingLayer { Id = "rock", Material = LayerMaterial.CrushedRockMoist, Thickness = Mm(300) },
                new ExistingLayer { Id = "soil", Material = LayerMaterial.Soil },
            ],
        },
        Mixes = [Mix("ac16", MixKind.AsphaltConcrete, "16 mm", 2.46), Mix("sma8", MixKind.StoneMastic, "8 mm", 2.38)],
        Courses =
        [
            new Course
            {
                Id = "binder", Mix = "ac16", Kind = CourseKind.Binder, Thickness = Mm(85), ThicknessLowest = Mm(78), Laid = Laying.Separately,
                LayingTemperature = Band(156),
            },
            new Course
            {
                Id = "wearing", Mix = "sma8", Kind = CourseKind.Surface, Thickness = Mm(25), ThicknessLowest = Mm(21), Laid = Laying.HotOnHot,
                On = "binder", Delay = Min(1), LayingTemperature = Band(152),
            },
        ],
        Runs =
        [
            new Run
            {
                Id = "1", Paver = "p1", From = Metres(150), To = Metres(1200), Width = Metres(8), LeftEdge = EdgeKind.Kerb, RightEdge = EdgeKind.Free,
            },
        ],
        Supply = Supply(),
        Pavers =
        [
            new Paver
            {
                Id = "p1", Courses = ["binder", "wearing"], CarriedBy = CarriedBy.Frame, Speed = M<Speed>(2.6, "m/min"),
                Buffers = [new MixBuffer { Course = "binder", Capacity = T(50), Lowest = T(8) }, new MixBuffer { Course = "wearing", Capacity = T(28), Lowest = T(5), Call = T(12) }],
            },
        ],
        Rolling = Rolling(),
        Opening = new Opening { After = M<Duration>(36, "h"), Below = new PlacedTemperature { Value = C(40), Place = Place.Skin } },
    };

    private static Mix Mix(string id, MixKind kind, string sieve, double density) => new()
    {
        Id = id,
        Kind = kind,
        AggregateSize = new AggregateSize { Sieve = Sieve.Find(sieve)!, Basis = SizeBasis.UpperSieve },
        Binder = new Binder { Grade = "25/55-55", Modified = true },
        Density = new MixDensity { Compacted = M<Density>(density, "t/m3"), Reference = DensityReference.Laboratory },
        Cessation = new PlacedTemperature { Value = C(100), Place = Place.CourseMean },
    };

    private static IEnumerable<WeatherHour> Hours()
    {
        double[] air = [16, 15, 14, 13, 12, 11, 11, 10, 9, 9];
        double[] below = [20, 18, 18, 17, 16, 16, 15, 15, 14, 14];
        double[] wind = [3.0, 2.8, 3.0, 3.0, 3.5, 3.5, 4.0, 4.0, 4.0, 4.0];
        int[] cloud = [3, 3, 4, 4, 4, 5, 5, 5, 6, 6];
        double[] dew = [9, 9, 8, 8, 8, 8, 8, 8, 7, 7];
        return air.Select((celsius, i) => new WeatherHour
        {
            At = new Moment(new DateTime(2027, 5, 14, 20, 0, 0, DateTimeKind.Unspecified).AddHours(i), null),
            Air = C(celsius),
            Base = C(below[i]),
            Wind = M<Speed>(wind[i], "m/s"),
            CloudEighths = cloud[i],
            DewPoint = C(dew[i]),
            RainChance = M<Ratio>(i < 4 ? 5 : 10, "%"),
        });
    }

    private static PlanSupply Supply() => new()
    {
        Plants =
        [
            new Plant { Id = "a", Mixes = ["ac16"], Nameplate = TPerH(320), Planned = TPerH(270), SiloAtStart = T(300) },
            new Plant { Id = "b", Mixes = ["sma8"], Nameplate = TPerH(160), Planned = TPerH(90), SiloAtStart = T(80) },
        ],
        Trucks =
        [
            new TruckGroup
            {
                Id = "big", Plant = "a", Mix = "ac16", Count = 15, Payload = T(25), Insulated = true, Covered = true, Loading = Min(5), Ticket = Min(4),
                HaulOut = Min(27), HaulBack = Min(24), Wait = Min(8), Cleaning = Min(5), LoadsBeforeStart = 5,
            },
            new TruckGroup
            {
                Id = "small", Plant = "b", Mix = "sma8", Count = 9, Payload = T(16), Insulated = true, Covered = true, Loading = Min(4), Ticket = Min(4),
                HaulOut = Min(38), HaulBack = Min(35), Wait = Min(10), Cleaning = Min(5), LoadsBeforeStart = 2,
            },
        ],
        Feeder = new Feeder
        {
            Id = "f1",
            Rate = TPerH(900),
            Exchange = Min(1),
            Changeover = Min(0.75),
            Remixes = true,
            EmptiedBeforeChange = true,
            RestGoesTo = "skip",
        },
    };

    private static PlanRolling Rolling() => new()
    {
        Reversal = M<Duration>(10, "s"),
        Phases =
        [
            new Phase { Id = "initial", Kind = PhaseKind.Initial, Passes = 2, ZoneFrom = Metres(2), ZoneTo = Metres(27) },
            new Phase { Id = "main", Kind = PhaseKind.Main, Passes = 4, ZoneFrom = Metres(27), ZoneTo = Metres(57) },
            new Phase { Id = "finish", Kind = PhaseKind.Finish, Passes = 2, ZoneFrom = Metres(65), ZoneTo = Metres(105) },
        ],
        Rollers =
        [
            Roller("r1", "initial", 7, 1.50, RollingMode.Static, 4),
            Roller("r2", "initial", 7, 1.50, RollingMode.Static, 4),
            Roller("r3", "main", 10, 1.68, RollingMode.Oscillation, 4.5),
            Roller("r4", "main", 10, 1.68, RollingMode.Vibration, 4.5) with { PassesInMode = 2 },
            Roller("r5", "finish", 10, 1.68, RollingMode.Static, 5),
            new Roller { Id = "r6", Mass = T(8), Spare = true },
        ],
    };

    private static Roller Roller(string id, string phase, double tonnes, double drum, RollingMode mode, double speed) => new()
    {
        Id = id,
        Phase = phase,
        Kind = RollerKind.Tandem,
        Mass = T(tonnes),
        DrumWidth = Metres(drum),
        Overlap = Metres(0.15),
        Mode = mode,
        Frequency = M<Frequency>(50, "Hz"),
        Speed = M<Speed>(speed, "km/h"),
    };
}
