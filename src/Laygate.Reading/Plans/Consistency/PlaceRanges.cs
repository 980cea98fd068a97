using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of place, site, shift, weather and existing pavement that cannot be.</summary>
internal static class PlaceRanges
{
    private const int SkyEighths = 8;
    private const double Pole = 90;
    private const double HalfTurn = 180;

    public static void Check(Plan plan, PlanPart at)
    {
        Within(at.Inside("location"), "latitude", plan.Location?.Latitude, Pole);
        Within(at.Inside("location"), "longitude", plan.Location?.Longitude, HalfTurn);
        at.Inside("location").CanBe("altitude", plan.Location?.Altitude, Possible.Altitude);
        if (plan.Site is { } site)
        {
            Site(site, at.Inside("site"));
        }

        at.Inside("shift").NotNegative("set_up", plan.Shift?.SetUp);
        if (plan.Weather is { } weather)
        {
            Weather(weather, at.Inside("weather"), plan.Existing?.Surface == ExistingSurface.NewAsphalt ? Possible.Asphalt : Possible.Ground);
        }

        if (plan.Existing is { } existing)
        {
            Existing(existing, at.Inside("existing"));
        }
    }

    private static void Within(PlanPart at, string key, Measure<Angle>? angle, double most)
    {
        if (angle is not null && Math.Abs(angle.Si) > most)
        {
            at.Fail(key, $"`{key}` is {MeasureReader.Write(angle)}; it must lie between -{MeasureReader.WriteNumber(most)} ° and {MeasureReader.WriteNumber(most)} °.");
        }
    }

    private static void Site(Site site, PlanPart at)
    {
        at.Positive("traffic_speed", site.TrafficSpeed);
        at.Positive("open_speed", site.OpenSpeed);
        at.CanBe("traffic_speed", site.TrafficSpeed, Possible.TrafficSpeed);
        at.CanBe("open_speed", site.OpenSpeed, Possible.TrafficSpeed);
        at.Inside("closure").Positive("width", site.Closure?.Width);
        at.Inside("closure").Positive("open_lane", site.Closure?.OpenLane);
        foreach (var (line, where) in at.Each("overhead_lines", site.OverheadLines))
        {
            where.Positive("voltage", line.Voltage);
            where.CanBe("voltage", line.Voltage, Possible.Voltage);
            where.Positive("height", line.Height);
            where.NotNegative("away", line.Away);
        }

        Safety(site, at);
    }

    private static void Safety(Site site, PlanPart at)
    {
        at.Positive("raised_height", site.RaisedHeight);
        at.CanBe("raised_height", site.RaisedHeight, Possible.RaisedBody);
        at.NotNegative("roller_to_edge", site.RollerToEdge);
        var space = at.Inside("space");
        space.NotNegative("side", site.Space?.Side);
        space.NotNegative("standing", site.Space?.Standing);
        space.Positive("taper_shift", site.Space?.TaperShift);
        space.NotNegative("taper", site.Space?.Taper);
        space.NotNegative("buffer", site.Space?.Buffer);
        space.Positive("cone_gap", site.Space?.ConeGap);
        space.Positive("footway", site.Space?.Footway);
        at.AtLeast("clothing_class", site.ClothingClass, 1);
        at.Inside("air").NotNegative("oxygen", site.Air?.Oxygen);
        at.Inside("air").NotNegative("speed", site.Air?.Speed);
        at.Inside("vibration").NotNegative("hand_arm", site.Vibration?.HandArm);
        at.Inside("vibration").NotNegative("whole_body", site.Vibration?.WholeBody);
        at.Inside("first_aid").NotNegative("cooling", site.FirstAid?.Cooling);
        at.Inside("first_aid").NotNegative("eye_flushing", site.FirstAid?.EyeFlushing);
        foreach (var (light, where) in at.Each("lights", site.Lights))
        {
            Level(light, where);
        }

        foreach (var (exposure, where) in at.Each("exposures", site.Exposures))
        {
            where.NotNegative("level", exposure.Level);
        }
    }

    private static void Level(Light light, PlanPart at)
    {
        at.NotNegative("level", light.Level);
        at.CanBe("level", light.Level, Possible.Light);
    }

    private static void Weather(Weather weather, PlanPart at, Possible ground)
    {
        at.Positive("wind_height", weather.WindHeight);
        at.CanBe("wind_height", weather.WindHeight, Possible.WindHeight);
        at.NotNegative("wind_at_mat", weather.WindAtMat);
        if (weather.Envelope is { } envelope)
        {
            Envelope(envelope, at.Inside("envelope"), ground);
        }

        foreach (var (hour, where) in at.Each("hours", weather.Hours))
        {
            Hour(hour, where, ground);
        }
    }

    private static void Envelope(WeatherEnvelope envelope, PlanPart at, Possible ground)
    {
        at.CanBe("air_lowest", envelope.AirLowest, Possible.Air);
        at.CanBe("air_highest", envelope.AirHighest, Possible.Air);
        at.CanBe("base_lowest", envelope.BaseLowest, ground);
        at.CanBe("base_highest", envelope.BaseHighest, ground);
        at.CanBe("dew_point_highest", envelope.DewPointHighest, Possible.DewPoint);
        at.CanBe("wind_highest", envelope.WindHighest, Possible.Wind);
        at.Temperature("air_lowest", envelope.AirLowest);
        at.Temperature("air_highest", envelope.AirHighest);
        at.Temperature("base_lowest", envelope.BaseLowest);
        at.Temperature("base_highest", envelope.BaseHighest);
        Depths(envelope.BaseAtDepth, at);
        at.Temperature("dew_point_highest", envelope.DewPointHighest);
        at.Ascending(("air_lowest", envelope.AirLowest), ("air_highest", envelope.AirHighest));
        at.Ascending(("base_lowest", envelope.BaseLowest), ("base_highest", envelope.BaseHighest));
        at.NotNegative("wind_highest", envelope.WindHighest);
        at.Share("rain_chance_highest", envelope.RainChanceHighest);
    }

    private static void Depths(IReadOnlyList<DepthTemperature> points, PlanPart at)
    {
        IMeasure? above = null;
        foreach (var (point, where) in at.Each("base_at_depth", points))
        {
            where.Positive("depth", point.Depth);
            where.Temperature("temperature", point.Temperature);
            if (point.Depth is not { } depth)
            {
                continue;
            }

            if (above is not null && !PlanPart.IsLess(above, depth))
            {
                where.Fail("depth", $"`depth` is {MeasureReader.Write(depth)}, not below the one before it with {MeasureReader.Write(above)}.", "List the depths from top to bottom, each once.");
            }

            above = depth;
        }
    }

    private static void Hour(WeatherHour hour, PlanPart at, Possible ground)
    {
        at.CanBe("air", hour.Air, Possible.Air);
        at.CanBe("base", hour.Base, ground);
        at.CanBe("dew_point", hour.DewPoint, Possible.DewPoint);
        at.CanBe("wind", hour.Wind, Possible.Wind);
        at.CanBe("sun", hour.Sun, Possible.Sun);
        at.Temperature("air", hour.Air);
        at.Temperature("base", hour.Base);
        Depths(hour.BaseAtDepth, at);
        at.Temperature("dew_point", hour.DewPoint);
        // Air cannot hold more water than makes dew: the dew point never lies above the air temperature.
        at.Ascending(("dew_point", hour.DewPoint), ("air", hour.Air));
        at.NotNegative("wind", hour.Wind);
        at.Share("rain_chance", hour.RainChance);
        at.NotNegative("sun", hour.Sun);
        if (hour.CloudEighths is < 0 or > SkyEighths)
        {
            at.Fail("cloud_eighths", $"`cloud_eighths` is {hour.CloudEighths}; it counts eighths of the sky, 0 to 8.");
        }
    }

    private static void Existing(Existing existing, PlanPart at)
    {
        at.Inside("milling").Positive("depth", existing.Milling?.Depth);
        at.Inside("milling").NotNegative("left_above_interface", existing.Milling?.LeftAboveInterface);
        foreach (var (layer, where) in at.Each("layers", existing.Layers))
        {
            where.Positive("thickness", layer.Thickness);
        }
    }
}
