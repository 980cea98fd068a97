using Laygate.Engineering.Records;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of bond coat: volumes of its tank, rates, binder that stays.</summary>
internal static class BinderFormulasOfCases
{
    private const string Emulsion = "emulsion";

    private static readonly CaseInput Area = new("area", CaseDimension.Area);
    private static readonly CaseInput Binder = new CaseInput("binder", null, Words: [Emulsion, "hot-binder"]).Optional();
    private static readonly CaseInput Reference = new CaseInput("reference", CaseDimension.Temperature).Optional();
    private static readonly CaseInput[] Residue = [new("residue", CaseDimension.Proportion), new CaseInput("dilution", CaseDimension.Proportion).Optional()];

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("volume-at-base", CaseDimension.Volume, [new("volume", CaseDimension.Volume), new("temperature", CaseDimension.Temperature), Reference, Binder], i => AtBase(i, i["volume"])),
        new("volume-factor", CaseDimension.Plain, [new("temperature", CaseDimension.Temperature), Reference, Binder], i => AtBase(i, 1)),
        new("bond-coat-rate", CaseDimension.VolumePerArea, [new("volume", CaseDimension.Volume), Area], i => BinderFormulas.Rate(i["volume"], i["area"])),
        new("bond-coat-residual-volume", CaseDimension.VolumePerArea, [new("rate", CaseDimension.VolumePerArea), .. Residue], i => BinderFormulas.Residual(i["rate"], i["residue"], i["dilution"])),
        new("bond-coat-residual-mass", CaseDimension.MassPerArea, [new("rate", CaseDimension.MassPerArea), .. Residue], i => BinderFormulas.Residual(i["rate"], i["residue"], i["dilution"])),
        new("bond-coat-spray-volume", CaseDimension.VolumePerArea, [new("residual", CaseDimension.VolumePerArea), .. Residue], i => BinderFormulas.Spray(i["residual"], i["residue"], i["dilution"])),
        new("bond-coat-spray-mass", CaseDimension.MassPerArea, [new("residual", CaseDimension.MassPerArea), .. Residue], i => BinderFormulas.Spray(i["residual"], i["residue"], i["dilution"])),
        new("bond-coat-volume", CaseDimension.Volume, [new("rate", CaseDimension.VolumePerArea), Area], i => BinderFormulas.Needed(i["rate"], i["area"])),
        new("binder-mass", CaseDimension.Mass, [new("volume", CaseDimension.Volume), new("gravity", CaseDimension.Plain), new("water", CaseDimension.DensityByGallon)], i => BinderFormulas.Mass(i["volume"], i["gravity"], i["water"])),
    ];

    private static double? AtBase(CaseInputs i, double volume)
    {
        var reference = i.Given("reference") ?? BinderFormulas.Base;
        return i.WordGiven("binder") is null or Emulsion ? BinderFormulas.Emulsion(volume, i["temperature"], reference) : BinderFormulas.Binder(volume, i["temperature"], reference);
    }
}
