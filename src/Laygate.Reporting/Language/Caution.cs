namespace Laygate.Reporting.Language;

/// <summary>The caution that stands below every result. It may be shown in other forms, never left out.</summary>
public static class Caution
{
    /// <summary>Sentences in order; each stands on its own line or paragraph.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "This checks what the plan states against the sources named above. It is no approval, permit or safety assessment. It sees neither site, crew, machines nor traffic: no finding does not mean safe.",
        "Local law, the road authority, permits, contract and makers' instructions come first. Figures from elsewhere are for orientation. Your specification governs; this is what the cited page says.",
        "A competent person must review and accept the plan, be on site with power to stop the work, and check again after any change. Licensed work stays with those who hold the licence.",
        "In doubt (unknown line or buried service, suspected tar, spotter out of sight, closure breached): stop and ask. In an emergency call the local emergency number first.",
        "Limits that are second-hand, recalled or judged say so: look them up before you rely on them. Using this check moves nobody's duty. Keep the plan, these findings, and who accepted or overruled each, why and when.",
    ];
}
