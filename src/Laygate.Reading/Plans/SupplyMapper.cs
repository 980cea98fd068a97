using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps plants, trucks and feeder.</summary>
internal static class SupplyMapper
{
    public static Supply Supply(Fields at) => new()
    {
        Plants = at.List("plants", Plant),
        Trucks = at.List("trucks", TruckGroup),
        Feeder = at.Block("feeder", Feeder),
        Identification = at.Block("identification", MixIdentification),
        Dispatch = at.Word<Dispatch>("dispatch"),
        WaitingPlaces = at.Count("waiting_places"),
        LeftOverGoesTo = at.Text("left_over_goes_to"),
    };

    private static Plant Plant(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Mixes = at.Ids("mixes"),
        Nameplate = at.Measure<MassFlow>("nameplate"),
        Planned = at.Measure<MassFlow>("planned"),
        SiloAtStart = at.Measure<Mass>("silo_at_start"),
        SiloCapacity = at.Measure<Mass>("silo_capacity"),
        LoadingPlaces = at.Count("loading_places"),
        LongestStop = at.Measure<Duration>("longest_stop"),
        Spare = at.Text("spare"),
    };

    private static TruckGroup TruckGroup(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Plant = at.Id("plant"),
        Mix = at.Id("mix"),
        Paver = at.Id("paver"),
        Kind = at.Word<TruckKind>("kind"),
        Count = at.Count("count"),
        Payload = at.Measure<Mass>("payload"),
        Insulated = at.Flag("insulated"),
        Covered = at.Flag("covered"),
        Loading = at.Measure<Duration>("loading"),
        Ticket = at.Measure<Duration>("ticket"),
        HaulOut = at.Measure<Duration>("haul_out"),
        HaulOutBad = at.Measure<Duration>("haul_out_bad"),
        HaulBack = at.Measure<Duration>("haul_back"),
        HaulBackBad = at.Measure<Duration>("haul_back_bad"),
        Wait = at.Measure<Duration>("wait"),
        Cleaning = at.Measure<Duration>("cleaning"),
        LoadsBeforeStart = at.Count("loads_before_start"),
    };

    private static Feeder Feeder(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Rate = at.Measure<MassFlow>("rate"),
        Exchange = at.Measure<Duration>("exchange"),
        Changeover = at.Measure<Duration>("changeover"),
        Remixes = at.Flag("remixes"),
        TemperatureLoss = at.Measure<TemperatureDelta>("temperature_loss"),
        Storage = at.Measure<Mass>("storage"),
        EmptiedBeforeChange = at.Flag("emptied_before_change"),
        RestGoesTo = at.Text("rest_goes_to"),
        UnloadingInParts = at.Flag("unloading_in_parts"),
        MassEmpty = at.Measure<Mass>("mass_empty"),
        MassFull = at.Measure<Mass>("mass_full"),
    };

    private static MixIdentification MixIdentification(Fields at) => new(
        OnTruck: at.Text("on_truck"),
        OnTicket: at.Text("on_ticket"),
        ReleasedBy: at.Text("released_by"),
        OnMismatch: at.Text("on_mismatch"));
}
