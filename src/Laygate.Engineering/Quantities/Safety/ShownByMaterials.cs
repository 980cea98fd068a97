using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Conditions of the site that bond coats and mixes decide.</summary>
internal static class ShownByMaterials
{
    /// <summary>A bond coat that is applied, or that has a rate, is sprayed.</summary>
    public static ShownCondition? Spraying(QuantityContext context) => context.Plan.BondCoats.FirstOrDefault(IsSprayed) is { } coat
        ? Yes($"bond-coat:{coat.Id}", coat.Applied is true ? "applied" : coat.Sprayed is not null ? "sprayed" : "rate")
        : null;

    /// <summary>A bond coat of hot binder.</summary>
    public static ShownCondition? HotBinder(QuantityContext context) => Binder(context, BondBinder.HotBinder);

    /// <summary>A bond coat of cut-back binder.</summary>
    public static ShownCondition? Solvents(QuantityContext context) => Binder(context, BondBinder.CutBack);

    /// <summary>A fresh surface of stone-mastic or porous asphalt is covered by binder film and grips late.</summary>
    /// <remarks>Kandhal and others, and surfacing specifications that ask for grit on stone-mastic asphalt, name the binder film (second-hand).</remarks>
    public static ShownCondition? SlipperyWhenNew(QuantityContext context)
    {
        var surface = context.Plan.Courses.FirstOrDefault(course => course.Kind == CourseKind.Surface
            && context.Plan.Mixes.Any(mix => string.Equals(mix.Id, course.Mix, StringComparison.Ordinal) && mix.Kind is MixKind.StoneMastic or MixKind.Porous));
        return surface is null ? null : Yes($"mix:{surface.Mix}", "kind");
    }

    private static bool IsSprayed(BondCoat coat) =>
        coat.Applied ?? (coat.Sprayed is not null || coat.MassRate is { Si: > 0 } || coat.VolumeRate is { Si: > 0 });

    private static ShownCondition? Binder(QuantityContext context, BondBinder binder) =>
        context.Plan.BondCoats.FirstOrDefault(coat => coat.Binder == binder && coat.Applied is not false) is { } found
            ? Yes($"bond-coat:{found.Id}", "binder")
            : null;

    private static ShownCondition Yes(string address, string key) => new(true, new InputReference(address, key));
}
