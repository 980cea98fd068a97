using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;

namespace Laygate.Checking.Starting;

/// <summary>A question with which a plan begins.</summary>
/// <param name="Id">Its id, which is also its option and its key in a file of answers.</param>
/// <param name="Text">The question.</param>
/// <param name="Form">What an answer looks like.</param>
/// <param name="FromStage">Stage from which it is asked.</param>
public sealed record StartQuestion(string Id, string Text, string Form, Stage FromStage)
{
    /// <summary>Words to choose from with what each means; empty where the answer is free.</summary>
    public IReadOnlyList<(string Word, string Meaning)> Choices { get; init; } = [];

    /// <summary>Whether several answers may stand, divided by commas.</summary>
    public bool IsList { get; init; }

    /// <summary>Dimension of a measure; null for anything else.</summary>
    internal Dimension? Measure { get; init; }

    /// <summary>Whether counts and ids of parts are answers.</summary>
    internal bool IsCountOrParts { get; init; }

    /// <summary>The list of parts from which it may be answered, such as <c>rollers</c>; null where it names no parts.</summary>
    public string? Parts { get; init; }

    /// <summary>What is wrong with an answer; null when it can be used.</summary>
    /// <param name="answer">The answer, without blanks around it.</param>
    public string? Problem(string answer)
    {
        IReadOnlyList<string> parts = IsList ? [.. answer.Split(',', StringSplitOptions.TrimEntries)] : [answer];
        return parts.Select(OfOne).FirstOrDefault(problem => problem is not null);
    }

    private string? OfOne(string one)
    {
        if (one.Length == 0)
        {
            return $"Write {Form}.";
        }

        if (Choices.Count > 0)
        {
            return Choices.Any(choice => string.Equals(choice.Word, one, StringComparison.Ordinal)) ? null
                : $"`{one}` is none of {string.Join(", ", Choices.Select(choice => choice.Word))}.{(NearestNames.Of(one, Choices.Select(choice => choice.Word)) is [var near, ..] ? $" Did you mean {near}?" : string.Empty)}";
        }

        if (Measure is { } dimension)
        {
            return MeasureReader.Explain(one, dimension) is { } problem ? $"{problem.Message} {problem.Hint}" : null;
        }

        return IsCountOrParts && !IsSlug(one) ? $"Write {Form}."
            : IsCountOrParts && int.TryParse(one, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is < 1 or > MostOfAKind ? $"Write a number from 1 to {MostOfAKind}."
            : null;
    }

    /// <summary>Machines or groups that are begun at once, at most: judgement, a shift has fewer.</summary>
    private const int MostOfAKind = 40;

    private static bool IsSlug(string text) => text.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-');
}

/// <summary>The questions with which a plan begins.</summary>
public static class StartQuestions
{
#pragma warning disable CS1591 // Each question says what it asks.
    public const string Kind = "kind";
    public const string Stage = "stage";
    public const string Units = "units";
    public const string Title = "title";
    public const string Jurisdiction = "jurisdiction";
    public const string Mixes = "mixes";
    public const string Thickness = "thickness";
    public const string Width = "width";
    public const string Lanes = "lanes";
    public const string Length = "length";
    public const string Speed = "speed";
    public const string Date = "date";
    public const string Start = "start";
    public const string End = "end";
    public const string Night = "night";
    public const string Traffic = "traffic";
    public const string Plants = "plants";
    public const string Trucks = "trucks";
    public const string Pavers = "pavers";
    public const string Rollers = "rollers";
    public const string ByHand = "by-hand";
    public const string Conditions = "conditions";
    internal const string NoneOfThem = "none";
#pragma warning restore CS1591

    /// <summary>The ids of all questions in the order in which they are asked.</summary>
    public static IReadOnlyList<string> Ids { get; } =
        [Kind, Stage, Units, Title, Jurisdiction, Mixes, Thickness, Width, Lanes, Length, Speed, Date, Start, End, Night, Traffic, Plants, Trucks, Pavers, Rollers, ByHand, Conditions];

    /// <summary>All questions in the order in which they are asked.</summary>
    /// <param name="reader">The reader of plans, whose schema knows the words and what they mean.</param>
    public static IReadOnlyList<StartQuestion> All(PlanReader reader) =>
    [
        new(Kind, "What kind of job?", "one of the words", Model.Plans.Stage.Concept)
        {
            Choices =
            [
                ("overlay", "one surface course on an old, cold surface"),
                ("thin-overlay", "one thin surface course on an old, cold surface"),
                ("mill-and-fill", "the old course milled off, one surface course laid in its place"),
                ("two-courses", "binder course, then the surface course on it when it is cold"),
                ("hot-on-hot", "binder and surface course in one go, compacted together"),
            ],
        },
        new(Stage, "How far is the plan?", "one of the words", Model.Plans.Stage.Concept) { Choices = WordsAt(reader, "plan", "stage") },
        new(Units, "Which units?", "one of the words", Model.Plans.Stage.Concept) { Choices = [("metric", "m, mm, °C, t"), ("us", "ft, in, °F, short ton")] },
        new(Title, "What is the job called?", "a title", Model.Plans.Stage.Concept),
        new(Jurisdiction, "Whose rules govern?", "an ISO 3166 code such as DE or US-WA, or none", Model.Plans.Stage.Concept),
        new(Mixes, "Which mixes, from bottom to top?", "names, or ids of mixes in the files that are used, divided by commas", Model.Plans.Stage.Concept) { IsList = true, Parts = "mixes" },
        new(Thickness, "How thick is each course when compacted, from bottom to top?", "lengths such as 40 mm or 1.5 in, divided by commas", Model.Plans.Stage.Concept) { IsList = true, Measure = Dimension.Length },
        new(Width, "How wide is the strip that is laid in one go?", "a length such as 3.6 m or 12 ft", Model.Plans.Stage.Concept) { Measure = Dimension.Length },
        new(Lanes, "How many strips side by side?", "a number", Model.Plans.Stage.Concept) { IsCountOrParts = true },
        new(Length, "How long is each strip?", "a length such as 900 m or 3000 ft", Model.Plans.Stage.Concept) { Measure = Dimension.Length },
        new(Speed, "How fast does the paver lay?", "a speed such as 4 m/min or 15 ft/min", Model.Plans.Stage.Concept) { Measure = Dimension.Speed },
        new(Date, "On which day does the shift begin?", "a day such as 2031-06-12", Model.Plans.Stage.Release),
        new(Start, "When does the shift begin?", "a time such as 20:45", Model.Plans.Stage.Release),
        new(End, "When does it end?", "a time such as 05:30", Model.Plans.Stage.Release),
        new(Night, "Is it laid by night?", "yes or no; the times say it where they are given", Model.Plans.Stage.Submission) { Choices = [("yes", string.Empty), ("no", string.Empty)] },
        new(Traffic, "What traffic passes the works?", "one of the words", Model.Plans.Stage.Submission) { Choices = WordsAt(reader, "site", "traffic") },
        new(Plants, "Which plants send the mix?", "ids divided by commas, or a number", Model.Plans.Stage.Submission) { IsList = true, IsCountOrParts = true, Parts = "plants" },
        new(Trucks, "How many trucks carry each mix, from bottom to top?", "numbers, or ids of groups in the files that are used, divided by commas", Model.Plans.Stage.Submission) { IsList = true, IsCountOrParts = true, Parts = "trucks" },
        new(Pavers, "Which pavers?", "ids of machines in the files that are used, divided by commas, or a number", Model.Plans.Stage.Submission) { IsList = true, IsCountOrParts = true, Parts = "pavers" },
        new(Rollers, "Which rollers, in the order behind the paver?", "ids of machines in the files that are used, divided by commas, or a number", Model.Plans.Stage.Submission) { IsList = true, IsCountOrParts = true, Parts = "rollers" },
        new(ByHand, "Which places are laid by hand?", "names divided by commas, such as driveway, or a number, or none", Model.Plans.Stage.Concept) { IsList = true, IsCountOrParts = true },
        new(Conditions, "Which of these hold on site? What you leave out is written as no.", "words divided by commas, or none", Model.Plans.Stage.Submission) { IsList = true, Choices = [.. SiteConditions(reader), (NoneOfThem, "none of them")] },
    ];

    private static IReadOnlyList<(string Word, string Meaning)> WordsAt(PlanReader reader, string group, string key)
    {
        var node = DraftPlaces.Find(DraftPlaces.Find(reader.Schema.Root, group)!, key)!;
        return node.Conjuncts.FirstOrDefault(part => part.Words.Count > 0) is { } list ? [.. list.Words.Zip(list.WordMeanings)] : [];
    }

    private static IEnumerable<(string Word, string Meaning)> SiteConditions(PlanReader reader)
    {
        var site = DraftPlaces.Find(reader.Schema.Root, "site")!;
        return SchemaKeys.Properties(DraftPlaces.Find(site, Conditions)!).Select(key => (key.Key, Needs.FirstSentence(key.Value)));
    }
}
