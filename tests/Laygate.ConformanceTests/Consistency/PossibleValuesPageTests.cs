using System.Globalization;
using System.Reflection;
using System.Text;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans.Consistency;

namespace Laygate.ConformanceTests.Consistency;

/// <summary>The page that lists what no plan can state; written anew with <c>LAYGATE_APPROVE</c>.</summary>
public sealed class PossibleValuesPageTests
{
    // The unit in which each bound is a round number, so that a bound that moves shows.
    private static readonly Dictionary<string, string> Units = new(StringComparer.Ordinal)
    {
        [nameof(Possible.Air)] = "°C",
        [nameof(Possible.DewPoint)] = "°C",
        [nameof(Possible.Ground)] = "°C",
        [nameof(Possible.Wind)] = "m/s",
        [nameof(Possible.WindHeight)] = "m",
        [nameof(Possible.RaisedBody)] = "m",
        [nameof(Possible.Sun)] = "W/m2",
        [nameof(Possible.Altitude)] = "m",
        [nameof(Possible.HotMix)] = "°C",
        [nameof(Possible.Asphalt)] = "°C",
        [nameof(Possible.Thickness)] = "mm",
        [nameof(Possible.Width)] = "m",
        [nameof(Possible.Gradient)] = "%",
        [nameof(Possible.PaverSpeed)] = "m/min",
        [nameof(Possible.RollerSpeed)] = "km/h",
        [nameof(Possible.TrafficSpeed)] = "km/h",
        [nameof(Possible.RollerMass)] = "kg",
        [nameof(Possible.Payload)] = "t",
        [nameof(Possible.Frequency)] = "Hz",
        [nameof(Possible.Amplitude)] = "mm",
        [nameof(Possible.Degree)] = "%",
        [nameof(Possible.TruckTime)] = "min",
        [nameof(Possible.Voltage)] = "kV",
        [nameof(Possible.Light)] = "lx",
    };

    private static IEnumerable<(string Name, Possible Bounds)> All => typeof(Possible).GetFields(BindingFlags.Static | BindingFlags.Public)
        .Where(one => one.FieldType == typeof(Possible)).Select(one => (one.Name, (Possible)one.GetValue(null)!));

    [Fact]
    public void The_page_lists_all_bounds() => Approved.File_holds("docs/possible-values.md", Page());

    private static string Page()
    {
        var text = new StringBuilder("""
            # What no plan can state

            Beyond these bounds a value is refused at its line (exit code 2), whatever the rules say: a unit, a point or a digit has slipped, and what is computed from it says nothing. No limit of a specification stands here; what is unusual but possible is asked about by a rule ([plan-keys.md](plan-keys.md), *usual*).
            The hint names a unit in which the same number would be possible; of several, the one that comes nearest to the ordinary value. Bounds of the weather lie beyond the records (World Meteorological Organization, recalled), the others well beyond machines and roads that the trade knows (common practice, no published source). Numbers below zero are refused wherever zero is the least that can be. This page is written from the program.

            | what | least | greatest | ordinary |
            |---|---|---|---|

            """);
        foreach (var (name, bounds) in All)
        {
            var unit = UnitTable.All.Single(one => one.Spelling == Units[name]);
            text.Append(CultureInfo.InvariantCulture, $"| {bounds.What.TrimEnd(',')} | {Measured(bounds.Low, unit)} | {Measured(bounds.High, unit)} | {Measured(bounds.Typical, unit)} |\n");
        }

        return text.ToString();
    }

    private static string Measured(double si, Unit unit) => double.IsFinite(si) ? $"{MeasureReader.WriteNumber(Math.Round(unit.FromSi(si), 6))} {unit.Spelling}" : string.Empty;
}
