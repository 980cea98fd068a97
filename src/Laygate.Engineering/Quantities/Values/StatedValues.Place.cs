using System.Globalization;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Values;

/// <summary>Numbers about the place, the site, the weather and what is laid upon.</summary>
internal sealed partial class StatedValues
{
    private void Place(Plan plan)
    {
        owner = "location";
        Add("altitude", plan.Location?.Altitude, ValueSort.Altitude);
        if (plan.Site is { } site) Site(site);
        owner = "shift";
        Add("set_up", plan.Shift?.SetUp, ValueSort.SetUp);
        owner = "weather";
        var ground = plan.Existing?.Surface == ExistingSurface.NewAsphalt ? ValueSort.WarmBase : ValueSort.Base;
        if (plan.Weather is { } weather) Weather(weather, ground);
        owner = "existing";
        Add("milling.depth", plan.Existing?.Milling?.Depth, ValueSort.MillingDepth);
        Add("milling.left_above_interface", plan.Existing?.Milling?.LeftAboveInterface, ValueSort.LeftAboveInterface);
        foreach (var layer in plan.Existing?.Layers ?? []) Add($"layers.{layer.Id}.thickness", layer.Thickness, ValueSort.ExistingLayer);
    }

    private void Site(Site site)
    {
        owner = "site";
        Add("traffic_speed", site.TrafficSpeed, ValueSort.TrafficSpeed);
        Add("open_speed", site.OpenSpeed, ValueSort.TrafficSpeed);
        Add("closure.width", site.Closure?.Width, ValueSort.ClosureWidth);
        Add("closure.open_lane", site.Closure?.OpenLane, ValueSort.OpenLane);
        Add("space.side", site.Space?.Side, ValueSort.SideSpace);
        Add("space.standing", site.Space?.Standing, ValueSort.SideSpace);
        Add("space.taper_shift", site.Space?.TaperShift, ValueSort.TaperShift);
        Add("space.taper", site.Space?.Taper, ValueSort.TaperLength);
        Add("space.buffer", site.Space?.Buffer, ValueSort.TaperLength);
        Add("space.cone_gap", site.Space?.ConeGap, ValueSort.ConeGap);
        Add("space.footway", site.Space?.Footway, ValueSort.SideSpace);
        Add("raised_height", site.RaisedHeight, ValueSort.RaisedHeight);
        Add("roller_to_edge", site.RollerToEdge, ValueSort.EdgeDistance);
        Add("air.speed", site.Air?.Speed, ValueSort.AirSpeed);
        Add("vibration.hand_arm", site.Vibration?.HandArm, ValueSort.BodyVibration);
        Add("vibration.whole_body", site.Vibration?.WholeBody, ValueSort.BodyVibration);
        Add("first_aid.cooling", site.FirstAid?.Cooling, ValueSort.FirstAid);
        Add("first_aid.eye_flushing", site.FirstAid?.EyeFlushing, ValueSort.FirstAid);
        Around(site);
    }

    private void Around(Site site)
    {
        foreach (var light in site.Lights)
        {
            owner = $"light:{light.Id}";
            Add("level", light.Level, ValueSort.Light);
        }

        foreach (var exposure in site.Exposures)
        {
            owner = $"exposure:{exposure.Id}";
            Add("level", exposure.Level, ValueSort.InAir);
        }

        foreach (var line in site.OverheadLines)
        {
            owner = $"overhead-line:{line.Id}";
            Add("voltage", line.Voltage, ValueSort.LineVoltage);
            Add("height", line.Height, ValueSort.LineHeight);
            Add("away", line.Away, ValueSort.LineDistance);
        }
    }

    private void Weather(Weather weather, ValueSort ground)
    {
        Add("wind_height", weather.WindHeight, ValueSort.WindHeight);
        Add("wind_at_mat", weather.WindAtMat, ValueSort.WindShare);
        Add("envelope.air_lowest", weather.Envelope?.AirLowest, ValueSort.Air);
        Add("envelope.air_highest", weather.Envelope?.AirHighest, ValueSort.Air);
        Add("envelope.base_lowest", weather.Envelope?.BaseLowest, ground);
        Depths("envelope.base_at_depth", weather.Envelope?.BaseAtDepth ?? []);
        Add("envelope.base_highest", weather.Envelope?.BaseHighest, ground);
        Add("envelope.wind_highest", weather.Envelope?.WindHighest, ValueSort.Wind);
        Add("envelope.dew_point_highest", weather.Envelope?.DewPointHighest, ValueSort.DewPoint);
        foreach (var hour in weather.Hours)
        {
            var key = $"hours.{Name(hour.At)}";
            Add($"{key}.air", hour.Air, ValueSort.Air);
            Add($"{key}.base", hour.Base, ground);
            Depths($"{key}.base_at_depth", hour.BaseAtDepth);
            Add($"{key}.wind", hour.Wind, ValueSort.Wind);
            Add($"{key}.dew_point", hour.DewPoint, ValueSort.DewPoint);
            Add($"{key}.sun", hour.Sun, ValueSort.Sun);
        }
    }

    private void Depths(string key, IReadOnlyList<DepthTemperature> points)
    {
        foreach (var point in points.Where(point => point.Depth is not null))
        {
            Add($"{key}.{Name(point.Depth!)}.depth", point.Depth, ValueSort.DepthBelow);
            Add($"{key}.{Name(point.Depth!)}.temperature", point.Temperature, ValueSort.TemperatureBelow);
        }
    }

    // As the hour is written in the plan, so that a reader finds it.
    private static string Name(Moment at)
    {
        var local = at.Local.ToString(at.Local.Second == 0 ? "yyyy-MM-dd'T'HH:mm" : "yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
        return at.Offset is { } offset ? $"{local}{(offset < TimeSpan.Zero ? '-' : '+')}{offset.ToString("hh':'mm", CultureInfo.InvariantCulture)}" : local;
    }
}
