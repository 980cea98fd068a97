using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps courses.</summary>
internal static class CourseMapper
{
    public static Course Course(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Kind = at.Word<CourseKind>("kind"),
        Mix = at.RequiredId("mix"),
        Thickness = at.RequiredMeasure<Length>("thickness"),
        ThicknessLowest = at.Measure<Length>("thickness_lowest"),
        ThicknessHighest = at.Measure<Length>("thickness_highest"),
        Tolerance = at.Measure<Length>("tolerance"),
        Laid = at.Word<Laying>("laid"),
        On = at.Id("on"),
        Distance = at.Measure<Length>("distance"),
        Delay = at.Measure<Duration>("delay"),
        LayingTemperature = at.Block("laying_temperature", MixMapper.TemperatureBand),
        LowerTemperatureLowest = at.Block("lower_temperature_lowest", MixMapper.PlacedTemperature),
        DensityBehindScreed = at.Block("density_behind_screed", DensityBehindScreed),
        Tonnage = at.Measure<Mass>("tonnage"),
    };

    private static DensityBehindScreed DensityBehindScreed(Fields at) => new(
        Value: at.Measure<Ratio>("value"),
        Evidence: at.Word<DensityEvidence>("evidence"),
        Date: at.Date("date"));
}
