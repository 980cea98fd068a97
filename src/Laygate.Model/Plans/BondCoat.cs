using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <content>A rate is stated by mass or by volume.</content>
public sealed partial record BondCoat
{
    /// <summary>Rate as mass per area; null where none is stated, or another.</summary>
    public Measure<AreaDensity>? MassRate => Rate as Measure<AreaDensity>;

    /// <summary>Rate as volume per area; null where none is stated, or another.</summary>
    public Measure<FilmThickness>? VolumeRate => Rate as Measure<FilmThickness>;
}
