using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Values;

/// <summary>
/// Lists the numbers that a plan states and of which a usual range can be named, in plan order. The plan schema names the sort of
/// each; stations and angles tell where something lies and have none.
/// </summary>
internal sealed partial class StatedValues
{
    private readonly List<StatedValue> values = [];
    private readonly Plan plan;
    private string owner = string.Empty;
    private bool isMastic;

    private StatedValues(Plan plan) => this.plan = plan;

    /// <summary>The numbers of the elements of a plan.</summary>
    public static IReadOnlyList<StatedValue> Of(PlanElements elements)
    {
        var list = new StatedValues(elements.Plan);
        foreach (var element in elements.All)
        {
            list.Element(element);
        }

        return list.values;
    }

    private void Element(Element element)
    {
        owner = element.Address;
        isMastic = (element.Subject as Mix ?? MixOf(element.Subject as Course))?.Kind == MixKind.MasticAsphalt;
        Add(element.Subject);
        if (element.Subject is Run run)
        {
            Length(run);
        }
    }

    // Stations may be chainages: only the way between them can be unusual. It is shown at the last one, in its unit.
    private void Length(Run run)
    {
        if (run is { From: { } from, To: { } to })
        {
            Add(string.Empty, "to", new Measure<Length>(to.Unit.FromSi(Math.Abs(to.Si - from.Si)), to.Unit), ValueSorts.RunLength);
        }
    }

    private void Add(string at, string key, IMeasure? measure, string sort)
    {
        if (measure is not null)
        {
            values.Add(new StatedValue(owner, at + key, Refined(sort, measure), measure, null));
        }
    }

    private void Add(string at, string key, int? count, string sort)
    {
        if (count is not null)
        {
            values.Add(new StatedValue(owner, at + key, sort, null, count));
        }
    }

    // Other ranges are usual where the plan says more about what is measured.
    private string Refined(string sort, IMeasure measure) => sort switch
    {
        ValueSorts.HotMix when isMastic => ValueSorts.MasticMix,
        ValueSorts.Base when plan.Existing?.Surface == ExistingSurface.NewAsphalt => ValueSorts.WarmBase,
        ValueSorts.BondCoatMass when measure is Measure<FilmThickness> => ValueSorts.BondCoatVolume,
        _ => sort,
    };

    private Mix? MixOf(Course? course) => course is null ? null : plan.Mixes.FirstOrDefault(mix => string.Equals(mix.Id, course.Mix, StringComparison.Ordinal));

    private static string Name(string id) => id;

    // As a reference names the entry of a list: the station or depth as it is written.
    private static string Name(IMeasure at) => string.Create(CultureInfo.InvariantCulture, $"{at.Number:0.######} {at.Unit.Spelling}");

    // As the hour is written in the plan, so that a reader finds it.
    private static string Name(Moment at)
    {
        var local = at.Local.ToString(at.Local.Second == 0 ? "yyyy-MM-dd'T'HH:mm" : "yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
        return at.Offset is { } offset ? $"{local}{(offset < TimeSpan.Zero ? '-' : '+')}{offset.ToString("hh':'mm", CultureInfo.InvariantCulture)}" : local;
    }
}
