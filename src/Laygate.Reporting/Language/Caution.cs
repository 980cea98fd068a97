namespace Laygate.Reporting.Language;

/// <summary>The caution that stands below every result. It may be shown in other forms, never left out.</summary>
public static class Caution
{
    /// <summary>Sentences in order; each stands on its own line or paragraph.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "This checks what the plan states against the sources named above. It is no approval, permit, design, method statement or safety assessment. It sees neither site, ground, hidden services, crew, machines, weather nor traffic: no finding does not mean safe.",
        "Local law, the authorities, the owners of roads, networks and railways, permit and contract come first, and makers' instructions and safety data sheets govern each machine and product. Figures of other countries are for orientation. Your specification governs; this is what the cited page says.",
        "Editions change: each limit shows its source and edition, and its dates where it is suspended or still to come. The hash names the rules that were used. Limits that are second-hand, recalled or judged say so: look them up before you rely on them.",
        "A person who is competent under local law must review and accept the plan, be on site with power to stop the work, and check again after any change. Work reserved to licensed people (engineers, traffic designers, line owners, gas fitters, radiation licensees, waste carriers, doctors) stays with them.",
        "In doubt (unknown line or buried service, suspected tar, spotter out of sight, closure breached): stop and ask. In an emergency call the local emergency number first. First-aid text is a prompt, no medical advice; follow the medical service.",
        "Using this check moves no duty of client, designer, contractor, employer or worker. Keep the plan, these findings, and who accepted or overruled each, why and when.",
    ];
}
