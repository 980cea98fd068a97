namespace Laygate.Mutation;

/// <summary>
/// Which tests are worth running first: those that are likely to notice for what they cost. A test that reaches few places says much about each;
/// which methods notice mutants is learnt on the way. A theory sends a few of its cases, not all.
/// </summary>
internal sealed class TestOrder(IReadOnlyList<TestRecord> tests)
{
    // Each case of a theory may hold a place of its own: many where they are cheap, a few where they are dear.
    private const int CasesOfAMethod = 6;
    private const double CostOfAMethod = 400;
    private const double Belief = 5;
    private const double FewPlaces = 50;

    // So many places are reached by the check of a whole plan only. What is compared with an approved text there is likely to move.
    private const int PlacesOfAPlan = 500;
    private const double ChanceOfApproved = 0.4;

    private readonly Dictionary<string, (double Tried, double Noticed)> known = new(StringComparer.Ordinal);

    /// <summary>The tests to run: for two fifths of the budget those of single parts, then those of whole plans; the most promising first.</summary>
    public List<int> Best(IEnumerable<int> reaching, double budget)
    {
        var ordered = reaching.GroupBy(test => Method(test), StringComparer.Ordinal)
            .SelectMany(group => Cases(group))
            .OrderByDescending(test => Chance(test) / (tests[test].Cost + 1)).ToLookup(OfAPlan);
        return [.. Budget.Fill(tests, ordered[false], budget * 2 / 5), .. Budget.Fill(tests, ordered[true], budget * 3 / 5)];
    }

    /// <summary>Takes in what a run has shown; <paramref name="noticed"/> is negative where none failed.</summary>
    public void Learn(List<int> run, int noticed)
    {
        foreach (var test in run)
        {
            var (tried, found) = known.GetValueOrDefault(Method(test));
            known[Method(test)] = (tried + 1, found + (test == noticed ? 1 : 0));
            if (test == noticed)
            {
                return;
            }
        }
    }

    private IEnumerable<int> Cases(IEnumerable<int> method)
    {
        var spent = 0.0;
        return method.OrderBy(test => tests[test].Cost).TakeWhile((test, index) => (spent += tests[test].Cost) <= CostOfAMethod || index < CasesOfAMethod);
    }

    private double Chance(int test)
    {
        var (tried, noticed) = known.GetValueOrDefault(Method(test));
        var before = OfAPlan(test) && tests[test].Name.Contains("approved", StringComparison.Ordinal) ? ChanceOfApproved : 1 / (1 + (tests[test].Hits.Count / FewPlaces));
        return (noticed + (Belief * before)) / (tried + Belief);
    }

    private bool OfAPlan(int test) => tests[test].Hits.Count > PlacesOfAPlan;

    private string Method(int test) => tests[test].Name.Split('(')[0];
}
