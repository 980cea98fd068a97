using System.Globalization;
using System.Text;
using Laygate.Checking.Starting;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Sizing;

/// <summary>Writes usual values into a plan where it states nothing. The text that comes out is read like any other plan, so that what is sized is what would be checked.</summary>
internal sealed class SizingDraft(PlanTools tools, MapToken stated)
{
    private static readonly (string Phase, string Passes)[] Phases =
        [("initial", SizingAssumptions.InitialPasses), ("main", SizingAssumptions.MainPasses), ("finish", SizingAssumptions.FinishPasses)];

    private readonly Dictionary<string, UsualValue> usual = new(StringComparer.Ordinal);

    /// <summary>The usual values that were taken so far, in the order of taking.</summary>
    public IReadOnlyList<UsualValue> Usual => [.. usual.Values];

    /// <summary>Whether the rollers are usual ones, whose number is looked for.</summary>
    public bool HasUsualRollers => stated["rolling"] is not MapToken rolling || rolling["rollers"] is null;

    /// <summary>Whether the plan states its weather.</summary>
    public bool StatesWeather => stated["weather"] is MapToken weather && (weather["envelope"] is not null || weather["hours"] is not null);

    /// <summary>The plan with usual values.</summary>
    /// <param name="set">The assumptions that are in force.</param>
    /// <param name="rollers">Rollers of each phase, where they are usual ones.</param>
    /// <param name="weather">The weather; null: as stated.</param>
    /// <param name="stretch">Factor on the last station of each run.</param>
    /// <param name="isMonth">Whether the weather takes the place of a stated one.</param>
    /// <returns>The plan; null where the stated values and the usual ones make none.</returns>
    public Plan? Plan(AssumptionSet set, int rollers = 1, SizingWeather? weather = null, double stretch = 1, bool isMonth = false)
    {
        var draft = DraftReader.Of(stated);
        Courses(draft, set);
        Pavers(draft, set);
        Trucks(draft, set);
        if (HasUsualRollers)
        {
            Rolling(draft, set, rollers);
        }

        if (draft.Group("existing")["surface"] is null)
        {
            Word(draft.Group("existing"), "existing.surface", "surface", "old-asphalt", "Surface that is laid upon: most courses are laid on asphalt; concrete draws more heat and shortens the window.");
        }

        if (weather is not null)
        {
            var degrees = $"{MeasureReader.WriteNumber(weather.Degrees)} {weather.Unit}";
            if (isMonth)
            {
                draft.Set("weather", new DraftMap());
            }

            draft.Group("weather").Set("envelope", DraftMap.Of(("air_lowest", degrees), ("base_lowest", degrees), ("wind_highest", Take(set, SizingAssumptions.Wind, "weather.envelope.wind_highest"))));
        }

        Stretch(draft, stretch);
        var text = new DraftWriter(tools.Reader.Schema, UnitSystem.Metric).Write(draft, (_, _) => "said");
        return PlanMapper.Map(YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents[0]).Plan;
    }

    private void Courses(DraftMap draft, AssumptionSet set)
    {
        foreach (var course in Maps(draft["courses"]))
        {
            var mix = Maps(draft["mixes"]).FirstOrDefault(one => Same(one["id"], course["mix"]));
            if (course["laying_temperature"] is null && mix?["delivery"] is null && Id(course) is { } id && set.Find(SizingAssumptions.LayingTemperature) is { } temperature)
            {
                var expected = Take(set, SizingAssumptions.LayingTemperature, $"courses.{id}.laying_temperature");
                course.Set("laying_temperature", DraftMap.Of(("lowest", Text(temperature, temperature.Low)), ("expected", expected), ("highest", Text(temperature, temperature.High)), ("place", "course-mean")));
            }
        }
    }

    private void Pavers(DraftMap draft, AssumptionSet set)
    {
        if (draft["pavers"] is null)
        {
            draft.List("pavers").Items.Add(DraftMap.Of(("id", "paver")));
        }

        foreach (var paver in Maps(draft["pavers"]))
        {
            Fill(paver, set, $"pavers.{Id(paver)}", ("speed", SizingAssumptions.PaverSpeed), ("availability", SizingAssumptions.Availability));
        }
    }

    private void Trucks(DraftMap draft, AssumptionSet set)
    {
        var supply = draft.Group("supply");
        if (supply["trucks"] is null)
        {
            foreach (var mix in Maps(draft["courses"]).Select(course => (course["mix"] as DraftText)?.Text).OfType<string>().Distinct(StringComparer.Ordinal))
            {
                supply.List("trucks").Items.Add(DraftMap.Of(("id", mix), ("mix", mix), ("count", "1")));
            }
        }

        foreach (var trucks in Maps(supply["trucks"]))
        {
            Fill(trucks, set, $"supply.trucks.{Id(trucks)}", ("payload", SizingAssumptions.Payload), ("haul_out", SizingAssumptions.Haul), ("haul_back", SizingAssumptions.Haul));
        }
    }

    private void Rolling(DraftMap draft, AssumptionSet set, int rollers)
    {
        var rolling = draft.Group("rolling");
        if (rolling["phases"] is null)
        {
            foreach (var (phase, passes) in Phases)
            {
                var zone = Take(set, SizingAssumptions.ZoneLength, "rolling.phases.zone_to");
                rolling.List("phases").Items.Add(DraftMap.Of(("id", phase), ("kind", phase), ("passes", Take(set, passes, $"rolling.phases.{phase}.passes")), ("zone_from", "0 m"), ("zone_to", zone)));
            }
        }

        foreach (var phase in Maps(rolling["phases"]).Select(Id).OfType<string>().ToList())
        {
            for (var number = 1; number <= rollers; number++)
            {
                rolling.List("rollers").Items.Add(DraftMap.Of(
                    ("id", string.Create(CultureInfo.InvariantCulture, $"{phase}-{number}")), ("phase", phase), ("kind", "tandem"),
                    ("drum_width", Take(set, SizingAssumptions.DrumWidth, "rolling.rollers.drum_width")), ("speed", Take(set, SizingAssumptions.RollerSpeed, "rolling.rollers.speed"))));
            }
        }
    }

    private static void Stretch(DraftMap draft, double stretch)
    {
        foreach (var run in stretch == 1 ? [] : Maps(draft["runs"]))
        {
            if (run["from"] is DraftText { Text: { } from } && run["to"] is DraftText { Text: { } to } last && MeasureReader.Read(from, Dimension.Length, out _) is var (start, startUnit) && MeasureReader.Read(to, Dimension.Length, out _) is var (end, endUnit))
            {
                var begin = startUnit.ToSi(start);
                last.Text = $"{MeasureReader.WriteNumber(endUnit.FromSi(begin + (stretch * (endUnit.ToSi(end) - begin))))} {endUnit.Spelling}";
            }
        }
    }

    private void Fill(DraftMap group, AssumptionSet set, string path, params ReadOnlySpan<(string Key, string Id)> values)
    {
        foreach (var (key, id) in values)
        {
            if (group[key] is null)
            {
                group.Set(key, new DraftText(Take(set, id, $"{path}.{key}")));
            }
        }
    }

    private string? Take(AssumptionSet set, string id, string key)
    {
        var assumption = set[id];
        usual.TryAdd(key, new UsualValue(key, id, assumption.Meaning, new ShownValue(assumption.Number, assumption.Unit, assumption.Low, assumption.High), assumption.Source, assumption.Evidence));
        return Text(assumption, assumption.Number);
    }

    private void Word(DraftMap group, string path, string key, string word, string why)
    {
        group.Set(key, new DraftText(word));
        usual.TryAdd(path, new UsualValue(path, null, why, new ShownValue(null, string.Empty, Text: word), Engineering.Formulas.Sources.Judgement, Evidence.Judgement));
    }

    // A number without a unit is a count of passes.
    private static string Text(Assumption assumption, double number) => assumption.Unit.Length == 0
        ? Math.Round(number).ToString(CultureInfo.InvariantCulture)
        : $"{MeasureReader.WriteNumber(number)} {assumption.Unit}";

    private static IEnumerable<DraftMap> Maps(DraftNode? list) => (list as DraftList)?.Items.OfType<DraftMap>() ?? [];

    private static string? Id(DraftMap map) => (map["id"] as DraftText)?.Text;

    private static bool Same(DraftNode? one, DraftNode? other) => one is DraftText { Text: { } text } && other is DraftText { Text: { } second } && string.Equals(text, second, StringComparison.Ordinal);
}
