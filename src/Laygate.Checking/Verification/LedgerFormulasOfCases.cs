using Laygate.Engineering.Records;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of the ledger of a shift.</summary>
internal static class LedgerFormulasOfCases
{
    private static readonly CaseInput Mass = new("mass", CaseDimension.Mass);
    private static readonly CaseInput Area = new("area", CaseDimension.Area);
    private static readonly CaseInput Length = new("length", CaseDimension.Length);

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("net-mass", CaseDimension.Mass, [new("gross", CaseDimension.Mass), new("tare", CaseDimension.Mass)], i => LedgerFormulas.Net(i["gross"], i["tare"])),
        new("mass-laid", CaseDimension.Mass, [new("tickets", CaseDimension.Mass), new CaseInput("not_laid", CaseDimension.Mass).Optional(), new CaseInput("on_machine", CaseDimension.Mass).Optional()],
            i => LedgerFormulas.Laid(i["tickets"], i["not_laid"], i["on_machine"])),
        new("mass-per-length", CaseDimension.MassPerLength, [Mass, Length], i => LedgerFormulas.PerLength(i["mass"], i["length"])),
        new("thickness-of-rate", CaseDimension.Length, [new("rate", CaseDimension.MassPerArea), new("density", CaseDimension.RatePerThickness)], i => LedgerFormulas.ThicknessOfRate(i["rate"], i["density"])),
        new("mass-of-rate", CaseDimension.Mass, [new("rate", CaseDimension.MassPerArea), Area], i => LedgerFormulas.MassOfRate(i["rate"], i["area"])),
        new("mass-per-area", CaseDimension.MassPerArea, [Mass, Area], i => LedgerFormulas.PerArea(i["mass"], i["area"])),
        new("mean-thickness", CaseDimension.Length, [Mass, new("density", CaseDimension.Density), Area], i => LedgerFormulas.Thickness(i["mass"], i["density"], i["area"])),
        new("thickness-uncertainty", CaseDimension.Proportion, [new("mass", CaseDimension.Proportion), new("density", CaseDimension.Proportion), new("width", CaseDimension.Proportion), new("length", CaseDimension.Proportion)],
            i => LedgerFormulas.Uncertainty(i["mass"], i["density"], i["width"], i["length"])),
        new("mass-by-yield", CaseDimension.Mass, [new("planned", CaseDimension.Mass), new("laid", CaseDimension.Mass), new("planned_of_laid", CaseDimension.Mass)],
            i => LedgerFormulas.ByYield(i["planned"], i["laid"], i["planned_of_laid"])),
        new("mass-to-load", CaseDimension.Mass, [new("needed", CaseDimension.Mass), new("on_hand", CaseDimension.Mass)], i => LedgerFormulas.ToLoad(i["needed"], i["on_hand"])),
        new("time-left", CaseDimension.Duration, [Mass, new("rate", CaseDimension.MassFlow), new CaseInput("stops", CaseDimension.Duration).Optional()], i => LedgerFormulas.TimeLeft(i["mass"], i["rate"], i["stops"])),
        new("run-of-mass", CaseDimension.Length, [Mass, new("width", CaseDimension.Length), new("rate", CaseDimension.MassPerArea)], i => LedgerFormulas.Run(i["mass"], i["width"], i["rate"])),
        new("taper-area", CaseDimension.Area, [new("first", CaseDimension.Length), new("last", CaseDimension.Length), Length], i => LedgerFormulas.Taper(i["first"], i["last"], i["length"])),
    ];
}
