using System.Text;
using System.Text.Json.Nodes;
using Laygate.Checking;
using Laygate.ConformanceTests;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reading;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.FuzzTests.Metamorphic;

/// <summary>Checks random plans, each under the rules that its number gives it.</summary>
internal static class Judgement
{
    private static readonly string[][] Books = [[], ["us-wa"], ["de"]];
    private static readonly PlanTools Tools = new();
    private static readonly QuantityCatalogue Catalogue = LaygateQuantities.Catalogue();
    private static readonly AssumptionSet Assumptions = LaygateAssumptions.Set();

    /// <summary>A quick check.</summary>
    public static FileResult Of(JsonNode plan, int number) =>
        new PlanCheck(Repository.Bound(Books[number % Books.Length]), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools).Run("plan.json", Bytes(plan));

    /// <summary>Findings by rule and address.</summary>
    public static Dictionary<(string Rule, string Address), Finding> Findings(FileResult result) => result.Reports[0].Findings.ToDictionary(finding => (finding.Rule, finding.Address));

    /// <summary>The quantities of a plan; a quick one has no spread and no simulated shift.</summary>
    public static QuantityContext Context(JsonNode plan, bool isQuick = true) =>
        new(PlanMapper.Map(YamlReader.Read(Bytes(plan)).Documents[0]).Plan!, Catalogue, Assumptions, 1) { IsQuick = isQuick };

    private static byte[] Bytes(JsonNode plan) => Encoding.UTF8.GetBytes(plan.ToJsonString());
}
