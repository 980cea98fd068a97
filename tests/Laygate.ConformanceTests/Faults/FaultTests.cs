namespace Laygate.ConformanceTests.Faults;

/// <summary>
/// Single faults planted in two plans, and harmless changes beside them.
/// <code>
/// one fault           dotnet test tests/Laygate.ConformanceTests --no-build --filter "FullyQualifiedName~Faults&amp;DisplayName~L01"
/// all of them         dotnet test tests/Laygate.ConformanceTests --no-build --filter "FullyQualifiedName~Faults"
/// the table           the same run writes artifacts/faults/table.txt: shares, and what is open and why
/// what each one says  ... and artifacts/faults/said.txt: every finding that a change adds or takes away
/// </code>
/// Work that answers an open fault makes <c>An_open_fault_is_still_open</c> fail: move its line from open.yaml to answers.yaml and state rule, status and the
/// number or word that shows the right reason. `LAYGATE_APPROVE=1` rewrites status, words and lists from what the check says today; read the diff.
/// What it marks `new` in open.yaml or leaves without `why` was read by nobody yet and is refused.
/// </summary>
public sealed class FaultTests
{
    public static TheoryData<string> Answered => [.. FaultAnswers.Answers.Select(answer => answer.Id).Distinct(StringComparer.Ordinal).Usual(3)];

    public static TheoryData<string> Open => [.. FaultAnswers.Open.Select(fault => fault.Id)];

    public static TheoryData<string> All => [.. FaultLists.Faults.Select(fault => fault.Id).Usual(3)];

    [Theory]
    [MemberData(nameof(Answered))]
    public void A_fault_is_answered_for_the_right_reason(string id)
    {
        var answers = FaultAnswers.Answers.Where(answer => answer.Id == id).ToList();
        Assert.NotEmpty(answers);
        Assert.All(answers, answer => Assert.Null(answer.Difference(Find(id))));
    }

    [Theory]
    [MemberData(nameof(Open))]
    public void An_open_fault_is_still_open(string id)
    {
        var open = FaultAnswers.Open.Single(fault => fault.Id == id);
        Assert.NotEmpty(open.Why);
        Assert.Empty(open.New);
        Assert.Equal(open.Adds.Order(StringComparer.Ordinal), OpenFault.AddsNow(Find(id)), StringComparer.Ordinal);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void What_must_fail_fails_or_the_list_says_why_it_only_warns(string id)
    {
        var fault = Find(id);
        var answers = FaultAnswers.Answers.Where(answer => answer.Id == id).ToList();
        Assert.Equal(1, FaultAnswers.Open.Count(open => open.Id == id) + (answers.Count > 0 ? 1 : 0));
        var fallsShort = answers.Count > 0 && fault.MustFail && answers.TrueForAll(answer => answer.Status == "warn");
        Assert.Equal(fallsShort, answers.Exists(answer => answer.Short is { Length: > 0 }));
    }

    [FactOfFullRun]
    public void What_a_fault_takes_away_is_listed_and_explained()
    {
        var now = FaultAnswersWriter.RemovalsNow([.. FaultAnswers.Answers.Where(answer => answer.Whole).Select(answer => answer.Id)]).ToList();
        Assert.All(FaultAnswers.Removals, removal => Assert.NotEmpty(removal.Why));
        Assert.Equal(FaultAnswers.Removals.Select(removal => removal with { Why = string.Empty }), now);
    }

    internal static Fault Find(string id) => FaultLists.Faults.Single(fault => fault.Id == id);
}
