using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Records;

/// <summary>The units of a ledger: those of the plan, or of its system where it states none.</summary>
internal sealed class LedgerUnits(Plan plan, UnitSystem system)
{
    /// <summary>Mass per length has no dimension of its own in plans.</summary>
    private static readonly Unit PerMetre = new("t/m", Dimension.None, 1000, Source: "1 t = 1000 kg");
    private static readonly Unit PerFoot = new("lb/ft", Dimension.None, 0.45359237 / 0.3048, System: UnitSystem.UnitedStates, Source: "exact pound and foot");

    public Unit Mass => IsUs ? UnitTable.Find("short ton")! : UnitTable.Find("t")!;

    public Unit Length => plan.Runs.Select(run => run.From?.Unit).FirstOrDefault(unit => unit is not null) is { Spelling: not "km" and not "mi" } stated ? stated : IsUs ? UnitTable.Find("ft")! : UnitTable.Find("m")!;

    public Unit Area => IsUs ? UnitTable.Find("yd2")! : UnitTable.Find("m2")!;

    public Unit PerLength => IsUs ? PerFoot : PerMetre;

    public Unit PerArea => IsUs ? UnitTable.Find("lb/yd2")! : UnitTable.Find("kg/m2")!;

    public Unit Rate => IsUs ? UnitTable.Find("short ton/h")! : UnitTable.Find("t/h")!;

    public Unit Density => IsUs ? UnitTable.Find("lb/ft3")! : UnitTable.Find("t/m3")!;

    public static Unit Minutes => UnitTable.Find("min")!;

    public static Unit Percent => UnitTable.Find("%")!;

    public static Unit Thickness(Course course) => course.Thickness.Unit;

    private bool IsUs => system == UnitSystem.UnitedStates;
}
