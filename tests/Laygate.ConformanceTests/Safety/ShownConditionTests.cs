using System.Globalization;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.Safety;

/// <summary>Conditions of the site that the plan's own data decide, and what becomes of a word that denies them.</summary>
public sealed class ShownConditionTests
{
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();

    /// <summary>
    /// Sunrise and sunset of the Royal Observatory Greenwich (51.48° N, 0°) in universal time, to the minute, as almanacs print them (recalled):
    /// 21 June 03:43 and 20:21, 21 December 08:04 and 15:53, 20 March 06:04 and 18:14. Five minutes on either side are asked.
    /// </summary>
    [Theory]
    [InlineData("2027-06-21", "10:00", "20:16", false)]
    [InlineData("2027-06-21", "10:00", "20:26", true)]
    [InlineData("2027-06-21", "03:48", "09:00", false)]
    [InlineData("2027-06-21", "03:38", "09:00", true)]
    [InlineData("2027-12-21", "10:00", "15:48", false)]
    [InlineData("2027-12-21", "10:00", "15:58", true)]
    [InlineData("2027-12-21", "08:09", "12:00", false)]
    [InlineData("2027-12-21", "07:59", "12:00", true)]
    [InlineData("2027-03-20", "10:00", "18:09", false)]
    [InlineData("2027-03-20", "10:00", "18:19", true)]
    public void It_is_night_once_the_sun_is_set(string date, string start, string end, bool night)
    {
        var plan = At(Single(), date, start, end);
        Assert.Equal(new FlagValue(night), Holds(Silent(plan), "night").Value);
    }

    [Fact]
    public void Set_up_before_sunrise_is_night_work()
    {
        var plan = Single();
        plan = At(plan, "2027-12-21", "08:30", "12:00");
        Assert.Equal(new FlagValue(false), Holds(Silent(plan), "night").Value);
        var early = plan with { Shift = plan.Shift! with { SetUp = Single().Shift!.SetUp } }; // 40 min: from 07:50 on
        Assert.Equal(new FlagValue(true), Holds(Silent(early), "night").Value);
    }

    [Fact]
    public void What_data_show_is_not_asked_and_what_they_do_not_show_is_not_denied()
    {
        var plan = Silent(Single());
        Assert.Equal(new FlagValue(true), Holds(plan, "raised_bodies").Value); // rigid tippers
        Assert.Equal(new FlagValue(true), Holds(plan, "spraying").Value);
        Assert.Null(Holds(plan, "feeder").Value); // none is stated, and one may still come
        Assert.Null(Holds(plan, "neighbours").Value);
    }

    [Fact]
    public void A_stated_yes_is_never_taken_back()
    {
        var plan = At(Single(), "2027-06-21", "10:00", "12:00");
        plan = plan with { Site = plan.Site! with { Conditions = plan.Site.Conditions! with { Night = true } } };
        Assert.Equal(new FlagValue(true), Holds(plan, "night").Value);
    }

    [Fact]
    public void Obstacles_speak_through_their_kind_and_never_through_their_text()
    {
        var run = Single().Runs[0];
        var told = run with { Obstacles = [new Obstacle { Id = "o", What = "gully", Treatment = "finished by hand" }] };
        var kept = Silent(Single()) with { Runs = [told] };
        Assert.Null(Holds(kept, "drains").Value);
        Assert.Equal(new FlagValue(true), Holds(kept, "hand_work").Value);
        var known = kept with { Runs = [run with { Obstacles = [told.Obstacles[0] with { Kind = ObstacleKind.Gully }] }] };
        Assert.Equal(new FlagValue(true), Holds(known, "drains").Value);
    }

    [Fact]
    public void Conditions_that_guard_lives_are_denied_at_the_gravest_rule()
    {
        var book = Repository.Bound();
        var grave = Words(book.All.Single(entry => entry.Rule.Definition.Id is "SAF-120").Rule.Definition);
        var lesser = Words(book.All.Single(entry => entry.Rule.Definition.Id is "SAF-121").Rule.Definition);
        var asked = book.All.Select(entry => entry.Rule.Definition)
            .Where(rule => rule is { Severity: Severity.A } && rule.AppliesTo != ElementKind.Condition)
            .SelectMany(rule => rule.When.Select(condition => condition.Quantity))
            .Where(quantity => quantity.StartsWith("site.", StringComparison.Ordinal)).Select(quantity => quantity[5..]).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(grave.Intersect(lesser, StringComparer.Ordinal));
        Assert.DoesNotContain(lesser, asked.Contains);
        Assert.DoesNotContain(Catalogue.Find("condition.key")!.Words, key => CanBeShown(key) && !grave.Concat(lesser).Contains(key, StringComparer.Ordinal));
    }

    // Data decide a condition in one of these plans: each of them states what shows some.
    private static bool CanBeShown(string key) => ShowingPlans().Any(plan =>
    {
        var context = Context(plan);
        return context.Elements.Find($"condition:{key}") is { } element && context.Get("condition.shown", element).Value is FlagValue { Yes: true };
    });

    private static IEnumerable<Plan> ShowingPlans() =>
        new[] { "rules/bases/single.yaml", "rules/bases/pair.yaml", Repository.WholeQuay, "examples/county-route-us.yaml", "examples/moor-road-thin-overlay.yaml" }.Select(Read);

    private static string[] Words(RuleDefinition rule) => [.. rule.When.Single(condition => condition.Quantity is "condition.key").Words!];

    private static Answer Holds(Plan plan, string condition)
    {
        var context = Context(plan);
        return context.Get($"site.{condition}", context.Elements.Find("site")!);
    }

    private static QuantityContext Context(Plan plan) => new(plan, Catalogue, LaygateAssumptions.Set(), 1);

    private static Plan Silent(Plan plan) => plan with { Site = plan.Site! with { Conditions = new SiteConditions() } };

    private static Plan At(Plan plan, string date, string start, string end) => plan with
    {
        Location = plan.Location! with { Latitude = Degrees("51.48 °"), Longitude = Degrees("0 °") },
        Shift = plan.Shift! with
        {
            Date = DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture),
            Start = TimeOnly.ParseExact(start, "HH:mm", CultureInfo.InvariantCulture),
            End = TimeOnly.ParseExact(end, "HH:mm", CultureInfo.InvariantCulture),
            Zone = TimeSpan.Zero,
            ZoneAtEnd = null,
            SetUp = null,
        },
    };

    private static Measure<Angle> Degrees(string text) => new(double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture), UnitTable.Find("°")!);

    private static Plan Single() => Read("rules/bases/single.yaml");

    private static Plan Read(string path) => PlanMapper.Map(YamlReader.Read(Repository.Bytes(path)).Documents[0]).Plan!;
}
