namespace Laygate.Reporting.Language;

/// <summary>The caution that belongs to every result. It may be shown in other forms, never left out.</summary>
public static class Caution
{
    /// <summary>Sentences in order, what cannot wait first; each stands on its own line or paragraph.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "In doubt (unknown line or buried service, suspected tar, spotter out of sight, closure breached): stop and ask. In an emergency call the local emergency number first. First-aid text is a prompt, no medical advice; follow the medical service.",
        "This checks what the plan states against the sources named here. It is no approval, permit, design, method statement or safety assessment. It sees neither site, ground, hidden services, crew, machines, weather nor traffic: a clean result does not mean that the site is safe.",
        "Local law, the authorities, the owners of roads, networks and railways, permit and contract come first, and makers' instructions and safety data sheets govern each machine and product. Figures of other countries are for orientation. Your specification governs; this is what the cited page says.",
        "Editions change: each limit shows its source and edition, and its dates where it is suspended or still to come. The hash names the rules that were used. Limits that are second-hand, recalled or judged say so: look them up before you rely on them.",
        "A person who is competent under local law must review and accept the plan, be on site with power to stop the work, and check again after any change. Work reserved to licensed people (engineers, traffic designers, line owners, gas fitters, radiation licensees, waste carriers, doctors) stays with them.",
        "Everyone keeps their legal duties: client, designer, contractor, employer and worker. Keep the plan, these findings, and who accepted or overruled each, why and when.",
    ];

    /// <summary>The same where there is little room: behind a verdict, or beside a single finding.</summary>
    public static IReadOnlyList<string> Brief { get; } =
    [
        "In doubt stop and ask. In an emergency call the local emergency number first.",
        "This is no approval: local codes and the competent person come first.",
    ];
}
