using Laygate.Engineering.Acceptance;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of a compacted mix: gravities, voids, binder absorbed.</summary>
internal static class MixFormulasOfCases
{
    private static readonly CaseInput Maximum = new("maximum", CaseDimension.Plain);
    private static readonly CaseInput Bulk = new("bulk", CaseDimension.Plain);
    private static readonly CaseInput Content = new("binder", CaseDimension.Proportion);
    private static readonly CaseInput Binder = new("binder_gravity", CaseDimension.Plain);
    private static readonly CaseInput Effective = new("effective", CaseDimension.Plain);
    private static readonly CaseInput Aggregate = new("aggregate", CaseDimension.Plain);

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("density-share", CaseDimension.Proportion, [Bulk, Maximum], i => CoreFormulas.Share(i["bulk"], i["maximum"])),
        new("bulk-density", CaseDimension.Density, [new("gravity", CaseDimension.Plain), new("water", CaseDimension.Density)], i => CoreFormulas.Density(i["gravity"], i["water"])),
        new("effective-gravity", CaseDimension.Plain, [Maximum, Content, Binder], i => MixFormulas.Effective(i["maximum"], i["binder"], i["binder_gravity"])),
        new("effective-gravity-of-absorbed", CaseDimension.Plain, [Aggregate, new("absorbed", CaseDimension.Proportion), Binder],
            i => MixFormulas.EffectiveOfAbsorbed(i["aggregate"], i["absorbed"], i["binder_gravity"])),
        new("binder-absorbed", CaseDimension.Proportion, [Effective, Aggregate, Binder], i => MixFormulas.Absorbed(i["effective"], i["aggregate"], i["binder_gravity"])),
        new("maximum-gravity", CaseDimension.Plain, [Effective, Content, Binder], i => MixFormulas.Maximum(i["effective"], i["binder"], i["binder_gravity"])),
        new("voids-in-aggregate", CaseDimension.Proportion, [Bulk, Content, Aggregate], i => MixFormulas.VoidsInAggregate(i["bulk"], i["binder"], i["aggregate"])),
        new("voids-filled", CaseDimension.Proportion, [new("voids_in_aggregate", CaseDimension.Proportion), new("air_voids", CaseDimension.Proportion)],
            i => MixFormulas.Filled(i["voids_in_aggregate"], i["air_voids"])),
    ];
}
