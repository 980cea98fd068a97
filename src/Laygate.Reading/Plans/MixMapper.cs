using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps mixes and their temperatures.</summary>
internal static class MixMapper
{
    public static Mix Mix(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Name = at.Text("name"),
        Kind = at.Word<MixKind>("kind"),
        Gradation = at.Word<Gradation>("gradation"),
        AggregateSize = at.Block("aggregate_size", AggregateSize),
        Binder = at.Block("binder", Binder),
        Density = at.Block("density", MixDensity),
        Loading = at.Block("loading", TemperatureBand),
        Delivery = at.Block("delivery", TemperatureBand),
        RefuseBelow = at.Block("refuse_below", PlacedTemperature),
        Start = at.Block("start", PlacedTemperature),
        Cessation = at.Block("cessation", PlacedTemperature),
        CessationFrom = at.Word<CessationOrigin>("cessation_from"),
        Tender = at.Block("tender", TemperatureBand),
        GritEmbedment = at.Block("grit_embedment", PlacedTemperature),
        AgeLimit = at.Measure<Duration>("age_limit"),
        TemperatureReduction = at.Text("temperature_reduction"),
        Reclaimed = at.Measure<Ratio>("reclaimed"),
    };

    public static PlacedTemperature PlacedTemperature(Fields at) => new(
        Value: at.Measure<Temperature>("value"),
        Place: at.Word<Place>("place"));

    public static TemperatureBand TemperatureBand(Fields at) => new(
        Lowest: at.Measure<Temperature>("lowest"),
        Expected: at.Measure<Temperature>("expected"),
        Highest: at.Measure<Temperature>("highest"),
        Place: at.Word<Place>("place"));

    private static AggregateSize AggregateSize(Fields at) => new(
        Sieve: at.RequiredSieve("sieve"),
        Basis: at.Word<SizeBasis>("basis"));

    private static Binder Binder(Fields at) => new(
        Grade: at.Text("grade"),
        Modified: at.Flag("modified"));

    private static MixDensity MixDensity(Fields at) => new(
        Compacted: at.Measure<Density>("compacted"),
        Reference: at.Word<DensityReference>("reference"),
        Degree: at.Measure<Ratio>("degree"));
}
