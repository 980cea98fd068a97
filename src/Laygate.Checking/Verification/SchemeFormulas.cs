using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Acceptance;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Acceptance;

namespace Laygate.Checking.Verification;

/// <summary>Tables of the acceptance schemes that ship: what a statistic of a lot is paid.</summary>
internal static class SchemeFormulas
{
    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("scheme-pay", CaseDimension.Proportion,
            [
                new("scheme", null, Words: SchemeReader.Shipped), new("measures", null, Words: Words.Of<MeasuredProperty>()), new("statistic", null, Words: Words.Of<LotStatistic>()),
                new("result", CaseDimension.Plain), new CaseInput("results", CaseDimension.Count).Optional(),
            ],
            i => Pay(i)),
    ];

    private static double? Pay(CaseInputs i)
    {
        var (scheme, _) = SchemeReader.Open(i.Word("scheme"), new NoFiles());
        var found = scheme?.Characteristics.FirstOrDefault(one => one.Measures == Words.Find<MeasuredProperty>(i.Word("measures")) && one.Statistic == Words.Find<LotStatistic>(i.Word("statistic")));
        return found is null ? null : LotJudge.JudgeStatistic(found, new CourseLimits(Lower: null, Upper: null, Target: null, Design: null), i["result"], i.Whole("results")).Pay / 100;
    }

    private sealed class NoFiles : IRuleFiles
    {
        public byte[]? File(string path) => null;

        public IRuleFolder? Folder(string path) => null;
    }
}
