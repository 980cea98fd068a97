using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Reading.Imports;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Importing;

/// <summary>Makes groups of trucks of a list of loads: a group for each plant, mix and paver, its payload the mean of its loads, its trucks counted where each load names one.</summary>
public static class LoadGroups
{
    /// <summary>Makes the groups.</summary>
    /// <param name="loads">What was imported.</param>
    /// <param name="reader">Reads plans.</param>
    /// <returns>Groups of trucks, or why there are none; what are no loads stays as it is.</returns>
    public static Import OfLoads(Import loads, PlanReader reader)
    {
        if (loads.Kind is not "loads" || loads.Problems.Count > 0)
        {
            return loads;
        }

        List<ImportedEntry> groups = [.. loads.Entries.GroupBy(load => (load["plant"], load["mix"], load["paver"])).Select((group, index) => Group([.. group], index + 1))];
        var problems = ImportCheck.Of(groups, ["supply", "trucks"], reader);
        return loads with { Kind = "trucks", Entries = problems.Count > 0 ? [] : groups, Problems = ShownProblems.Of(loads.File, problems) };
    }

    private static ImportedEntry Group(IReadOnlyList<ImportedEntry> loads, int number)
    {
        var span = loads[0].Values[0].Span;
        List<ImportedValue> values = [new("id", string.Create(CultureInfo.InvariantCulture, $"loads-{number}")) { Span = span }];
        values.AddRange(loads[0].Values.Where(value => value.Key is "plant" or "mix" or "paver"));
        if (loads.All(load => load["truck"] is not null))
        {
            values.Add(new ImportedValue("count", loads.Select(load => load["truck"]).Distinct(StringComparer.Ordinal).Count().ToString(CultureInfo.InvariantCulture)) { Span = span });
        }

        values.Add(new ImportedValue("payload", Mean([.. loads.Select(load => load["payload"]!)])) { Span = loads[0].Values.First(value => value.Key is "payload").Span });
        return new ImportedEntry(values);
    }

    // With as many decimals as the loads are stated with: the mean is known no better.
    private static string Mean(IReadOnlyList<string> payloads)
    {
        var unit = payloads[0].Split(' ', 2)[1];
        var decimals = payloads.Max(payload => payload.Split(' ')[0] is var digits && digits.IndexOf('.', StringComparison.Ordinal) is >= 0 and var point ? digits.Length - point - 1 : 0);
        var mean = payloads.Average(payload => MeasureReader.Read(payload, Dimension.Mass, out _)?.Number ?? 0);
        return $"{MeasureReader.WriteNumber(Math.Round(mean, decimals, MidpointRounding.AwayFromZero))} {unit}";
    }
}
