using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;
using static Laygate.UnitTests.Rules.TestBook;

namespace Laygate.UnitTests.Rules;

/// <summary>Lists with kinds, and the silence about measures of severity A.</summary>
public sealed class SafetySilenceTests
{
    [Theory]
    [InlineData(Severity.A, true, true, Status.Fail)]
    [InlineData(Severity.A, true, false, Status.Warn)] // thin: something is said
    [InlineData(Severity.A, false, true, Status.Warn)] // before release the source decides
    [InlineData(Severity.B, true, true, Status.Warn)]
    public void A_recalled_source_fails_only_by_silence_at_release(Severity severity, bool atRelease, bool nothing, Status status) =>
        Assert.Equal(status, GateStatus.Of(new GateCase
        {
            Outcome = Outcome.Missed,
            Strength = Strength.Required,
            Evidence = Evidence.Recalled,
            Severity = severity,
            AtRelease = atRelease,
            NothingStated = nothing,
        }));

    [Fact]
    public void An_advised_measure_never_fails() =>
        Assert.Equal(Status.Warn, GateStatus.Of(new GateCase
        {
            Outcome = Outcome.Missed,
            Strength = Strength.Advised,
            Evidence = Evidence.Read,
            Severity = Severity.A,
            AtRelease = true,
            NothingStated = true,
        }));

    [Theory]
    [InlineData("what,where,who,when", "stated", "")]
    [InlineData("what,where,who", "thin", "when")]
    [InlineData("what,where,when", "absent", "who")]
    [InlineData("", "absent", "what,where,who,when")]
    public void An_entry_counts_with_the_needed_keys_and_is_thin_without_an_asked_one(string given, string level, string missing)
    {
        var found = Present([new ListEntry("measure:m1", "guard", Keys(given))]);
        Assert.Equal(level, found.Value!.Text);
        Assert.Equal(Keys(missing), found.Missing.Select(input => input.Key), StringComparer.Ordinal);
        Assert.All(found.Missing, input => Assert.Equal("measure:m1", input.Address));
    }

    [Fact]
    public void The_fullest_entry_of_any_kind_that_will_do_speaks()
    {
        var thin = new ListEntry("measure:m1", "guard", ["what", "where", "who"]);
        var full = new ListEntry("measure:m2", "camera", ["what", "where", "who", "when"]);
        Assert.Equal("stated", Present([thin, full]).Value!.Text);
        Assert.Equal("thin", Present([thin]).Value!.Text);
    }

    [Fact]
    public void Without_an_entry_the_list_itself_is_what_lacks_it()
    {
        var found = Present([new ListEntry("measure:m1", "welfare", ["what", "where", "who", "when"])]);
        Assert.Equal((Outcome.Missed, Status.Fail), (found.Outcome, found.Status));
        Assert.Equal(List, Assert.Single(found.Missing));
        Assert.Contains(found.Notes, note => string.Equals(note.Id, NoteIds.EntryMissing, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_only_advised_makes_thin_and_what_is_asked_for_nowhere_is_refused()
    {
        var entry = new ListEntry("measure:m1", "guard", ["what", "where", "who", "when"]);
        Assert.Equal("thin", Present([entry], new EntryLine(["welfare"], [])).Value!.Text);
        var (book, problems) = Build(new EntryLine(["no-such-kind"], ["no-such-key"]), null);
        Assert.Null(book);
        Assert.All(problems, problem => Assert.IsType<BookMistake.UnknownWord>(problem.Mistake));
        Assert.Equal(2, problems.Count);
    }

    private static readonly InputReference List = new("plan", "measures");

    private static string[] Keys(string text) => text.Split(',', StringSplitOptions.RemoveEmptyEntries);

    private static Finding Present(IReadOnlyList<ListEntry> entries, EntryLine? advised = null)
    {
        var (book, problems) = Build(new EntryLine(["guard", "camera"], ["when"]), advised ?? new EntryLine(["guard", "camera"], ["when"]));
        Assert.Empty(problems);
        var context = new QuantityContext(Plan(), Quantities, Assumptions, 1);
        context.Give("site.measures", "site", new Answer { Value = new PresenceValue(PresenceLevel.Stated, []) { Entries = entries }, Input = List });
        return Assert.Single(Evaluator.Evaluate(book!, context, new EvaluationSettings { File = "t", CheckedOn = new DateOnly(2026, 11, 25) }).Findings);
    }

    private static QuantityCatalogue Quantities { get; } = new(
    [
        new QuantityDefinition
        {
            Name = "site.measures", Element = ElementKind.Site, Kind = ValueKind.Presence, Meaning = "Measures.", Words = ["guard", "camera", "welfare"],
            EntryNeeds = ["what", "where", "who"], EntryMay = ["when"], Compute = (_, _) => Answer.Missing(List),
        },
    ]);

    private static (Laygate.Rules.Merging.RuleBook? Book, IReadOnlyList<BookProblem> Problems) Build(EntryLine required, EntryLine? advised)
    {
        List<Bound> bounds = [Of(new PresenceLimit { Entries = [required] })];
        if (advised is not null)
        {
            bounds.Add(Of(new PresenceLimit { Entries = [advised] }, Strength.Advised));
        }

        var rule = Rule("site.measures", CheckKind.Present, [.. bounds]) with { Family = "safety", Severity = Severity.A, AppliesTo = ElementKind.Site };
        var built = Laygate.Rules.Merging.RuleBook.Build(General(rule), [], Quantities, Assumptions);
        return (built.Book, built.Problems);
    }
}
