namespace Laygate.Checking.Sizing;

/// <summary>A weather for which the mat is sized: the air is as warm as the surface that is laid upon.</summary>
/// <param name="Degrees">Temperature of both.</param>
/// <param name="Unit">Its unit.</param>
public sealed record SizingWeather(double Degrees, string Unit);
