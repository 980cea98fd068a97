using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>A condition of the site that a plan states, as an element that a finding can name.</summary>
/// <param name="Key">Its key, for example <c>night</c>.</param>
/// <param name="Yes">What the plan says.</param>
public sealed record StatedCondition(string Key, bool Yes);

/// <summary>What the plan's own data say about a condition.</summary>
/// <param name="Yes">Whether it holds.</param>
/// <param name="By">The value that decides.</param>
/// <param name="Limit">Id of the assumption against which it was held; null where a word decides.</param>
internal sealed record ShownCondition(bool Yes, InputReference By, string? Limit = null);

/// <summary>A condition of the site on which safety rules depend.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Meaning">What holds when it is yes.</param>
/// <param name="Read">Reads what the plan states.</param>
/// <param name="Shown">What other data of the plan say about it; null where they decide nothing.</param>
internal sealed record SiteCondition(string Key, string Meaning, Func<Site, bool?> Read, Func<QuantityContext, ShownCondition?>? Shown = null)
{
    /// <summary>Key within the site under which the plan states it.</summary>
    public string Path { get; init; } = $"conditions.{Key}";

    /// <summary>Where the plan begins to speak of it and says too little, so that a stated no cannot be relied on; null where nothing leaves it open.</summary>
    public Func<QuantityContext, InputReference?>? LeftOpen { get; init; }

    /// <summary>Where the plan states it.</summary>
    public InputReference Input => new("site", Path);

    /// <summary>What the plan states.</summary>
    public bool? Stated(Plan plan) => plan.Site is { } site ? Read(site) : null;

    /// <summary>
    /// Whether it holds. What data show is so whatever is stated; a stated word comes next, so that a yes is never taken back; a no that
    /// follows from data stands where nothing is stated; what is not known is never no.
    /// </summary>
    public Answer Holds(QuantityContext context)
    {
        var shown = Shown?.Invoke(context);
        if (shown is { Yes: true })
        {
            return Follows(context, shown);
        }

        var stated = Stated(context.Plan);
        return stated is null && shown is not null ? Follows(context, shown) : Answers.Flag(stated, Input);
    }

    private static Answer Follows(QuantityContext context, ShownCondition shown)
    {
        var answer = Answers.Follows(shown.Yes, shown.By);
        if (shown.Limit is not { } id)
        {
            return answer;
        }

        var limit = context.Assumptions[id];
        return answer with { Working = new Working([], [], [new AssumptionUse(id, "site", limit.Number, limit.Unit, limit.Evidence, limit.Source, null)]) };
    }
}
