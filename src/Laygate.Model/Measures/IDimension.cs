namespace Laygate.Model.Measures;

/// <summary>
/// A dimension as a type: the compiler then keeps a length from standing where a temperature belongs. Nothing is made of these
/// types, and they are classes so that all measures share one compiled code.
/// </summary>
public interface IDimension
{
    /// <summary>The dimension that the type stands for.</summary>
    static abstract Dimension Of { get; }
}

/// <summary>Tag of <see cref="Dimension.Length"/>.</summary>
public abstract class Length : IDimension { static Dimension IDimension.Of => Dimension.Length; }

/// <summary>Tag of <see cref="Dimension.Area"/>.</summary>
public abstract class Area : IDimension { static Dimension IDimension.Of => Dimension.Area; }

/// <summary>Tag of <see cref="Dimension.Temperature"/>.</summary>
public abstract class Temperature : IDimension { static Dimension IDimension.Of => Dimension.Temperature; }

/// <summary>Tag of <see cref="Dimension.TemperatureDifference"/>.</summary>
public abstract class TemperatureDelta : IDimension { static Dimension IDimension.Of => Dimension.TemperatureDifference; }

/// <summary>Tag of <see cref="Dimension.Duration"/>.</summary>
public abstract class Duration : IDimension { static Dimension IDimension.Of => Dimension.Duration; }

/// <summary>Tag of <see cref="Dimension.Speed"/>.</summary>
public abstract class Speed : IDimension { static Dimension IDimension.Of => Dimension.Speed; }

/// <summary>Tag of <see cref="Dimension.Mass"/>.</summary>
public abstract class Mass : IDimension { static Dimension IDimension.Of => Dimension.Mass; }

/// <summary>Tag of <see cref="Dimension.MassFlow"/>.</summary>
public abstract class MassFlow : IDimension { static Dimension IDimension.Of => Dimension.MassFlow; }

/// <summary>Tag of <see cref="Dimension.Density"/>.</summary>
public abstract class Density : IDimension { static Dimension IDimension.Of => Dimension.Density; }

/// <summary>Tag of <see cref="Dimension.MassPerArea"/>.</summary>
public abstract class AreaDensity : IDimension { static Dimension IDimension.Of => Dimension.MassPerArea; }

/// <summary>Tag of <see cref="Dimension.Volume"/>.</summary>
public abstract class Volume : IDimension { static Dimension IDimension.Of => Dimension.Volume; }

/// <summary>Tag of <see cref="Dimension.VolumePerArea"/>.</summary>
public abstract class FilmThickness : IDimension { static Dimension IDimension.Of => Dimension.VolumePerArea; }

/// <summary>Tag of <see cref="Dimension.Proportion"/>.</summary>
public abstract class Ratio : IDimension { static Dimension IDimension.Of => Dimension.Proportion; }

/// <summary>Tag of <see cref="Dimension.Frequency"/>.</summary>
public abstract class Frequency : IDimension { static Dimension IDimension.Of => Dimension.Frequency; }

/// <summary>Tag of <see cref="Dimension.Pressure"/>.</summary>
public abstract class Pressure : IDimension { static Dimension IDimension.Of => Dimension.Pressure; }

/// <summary>Tag of <see cref="Dimension.ForcePerLength"/>.</summary>
public abstract class ForcePerLength : IDimension { static Dimension IDimension.Of => Dimension.ForcePerLength; }

/// <summary>Tag of <see cref="Dimension.Irradiance"/>.</summary>
public abstract class Irradiance : IDimension { static Dimension IDimension.Of => Dimension.Irradiance; }

/// <summary>Tag of <see cref="Dimension.Voltage"/>.</summary>
public abstract class ElectricPotential : IDimension { static Dimension IDimension.Of => Dimension.Voltage; }

/// <summary>Tag of <see cref="Dimension.Illuminance"/>.</summary>
public abstract class Illuminance : IDimension { static Dimension IDimension.Of => Dimension.Illuminance; }

/// <summary>Tag of <see cref="Dimension.Concentration"/>.</summary>
public abstract class MassConcentration : IDimension { static Dimension IDimension.Of => Dimension.Concentration; }

/// <summary>Tag of <see cref="Dimension.Acceleration"/>.</summary>
public abstract class Acceleration : IDimension { static Dimension IDimension.Of => Dimension.Acceleration; }

/// <summary>Tag of <see cref="Dimension.Angle"/>.</summary>
public abstract class Angle : IDimension { static Dimension IDimension.Of => Dimension.Angle; }
