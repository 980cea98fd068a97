using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps bond coats, joints, early friction and opening.</summary>
internal static class SurfaceMapper
{
    public static BondCoat BondCoat(Fields at)
    {
        var rate = at.Either<AreaDensity, FilmThickness>("rate");
        return new BondCoat
        {
            Id = at.RequiredId("id"),
            Below = at.RequiredId("below"),
            Applied = at.Flag("applied"),
            Reason = at.Text("reason"),
            Binder = at.Word<BondBinder>("binder"),
            MassRate = rate.First,
            VolumeRate = rate.Second,
            Basis = at.Word<RateBasis>("basis"),
            Residue = at.Measure<Ratio>("residue"),
            Sprayed = at.Moment("sprayed"),
            Broken = at.Flag("broken"),
            Trafficked = at.Flag("trafficked"),
        };
    }

    public static Joint Joint(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Kind = at.Word<JointKind>("kind"),
        Course = at.Id("course"),
        Run = at.Id("run"),
        Beside = at.Id("beside"),
        Where = at.Text("where"),
        OffsetBelow = at.Measure<Length>("offset_below"),
        Delay = at.Measure<Duration>("delay"),
        Form = at.Word<JointForm>("form"),
        Height = at.Word<JointHeight>("height"),
        Line = at.Word<JointLine>("line"),
        Removed = at.Measure<Length>("removed"),
        Coated = at.Flag("coated"),
    };

    public static EarlyFriction EarlyFriction(Fields at) => new()
    {
        Grit = at.Flag("grit"),
        GritSize = at.Text("grit_size"),
        Rate = at.Measure<AreaDensity>("rate"),
        GritBy = at.Measure<Duration>("grit_by"),
        Signs = at.Flag("signs"),
        TemporaryLimit = at.Measure<Speed>("temporary_limit"),
    };

    public static Opening Opening(Fields at) => new()
    {
        At = at.Moment("at"),
        After = at.Measure<Duration>("after"),
        Below = at.Block("below", MixMapper.PlacedTemperature),
        ReleasedBy = at.Text("released_by"),
    };
}
