using Laygate.Model.Levers;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Remedies;

/// <summary>Words for changes of a plan.</summary>
internal static class LeverWords
{
    /// <summary>A change with both values, for example <c>paver:p1 speed from 5 m/min to 3.2 m/min</c>.</summary>
    public static string Change(LeverSetting setting) =>
        $"{Name(setting)} from {Value(setting.From)} to {Value(setting.To)}{With(setting.Lever)}" + (setting.ByDesigner ? " (the designer must agree)" : string.Empty);

    private static string With(LeverKind lever) => lever switch
    {
        LeverKind.MixTemperature => ", delivery and laying with it",
        LeverKind.ShiftStart => ", the shift as long as before",
        LeverKind.Thickness => ", its lowest and highest with it",
        _ => string.Empty,
    };

    /// <summary>What is changed and where; what a plan has once needs no address.</summary>
    public static string Name(LeverSetting setting) => !setting.Address.Contains(':', StringComparison.Ordinal) ? What(setting.Lever) : $"{What(setting.Lever)} ({PlainText.Show(setting.Address)})".Replace(" (", $"{PlainText.Glue}(", StringComparison.Ordinal);

    /// <summary>A value with its unit.</summary>
    public static string Value(ShownValue value) => value.Number is { } number
        ? Figures.WithUnit(Rounding.Text(number, RoundingKind.Exact, 0), value.Unit)
        : PlainText.Show(value.Text ?? string.Empty);

    private static string What(LeverKind lever) => lever switch
    {
        LeverKind.PaverSpeed => "paver speed",
        LeverKind.TruckCount => "number of trucks",
        LeverKind.LoadsBeforeStart => "loads waiting before the start",
        LeverKind.Dispatch => "sending of the loads",
        LeverKind.LoadingPlaces => "loading places for the same mix",
        LeverKind.PlantOutput => "planned output",
        LeverKind.Tonnage => "tonnage ordered",
        LeverKind.Rollers => "rollers in the phase",
        LeverKind.RollerSpeed => "roller speed",
        LeverKind.ZoneLength => "end of the zone behind the screed",
        LeverKind.MixTemperature => "loading temperature",
        LeverKind.BufferCapacity => "buffer capacity",
        LeverKind.CallLevel => "call level of the buffer",
        LeverKind.Opening => "time of opening",
        LeverKind.ShiftStart => "start of the shift",
        LeverKind.Thickness => "nominal thickness",
        LeverKind.DoneWithin => "time in which the phase is done",
        LeverKind.GritBy => "time of the last grit behind the screed",
        _ => "rate of the bond coat",
    };
}
