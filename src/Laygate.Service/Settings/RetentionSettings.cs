using Laygate.Register;

namespace Laygate.Service.Settings;

/// <summary>How long names of people are kept.</summary>
public sealed class RetentionSettings
{
    /// <summary>Years without any event after the decision on the latest revision, after which names are replaced; 0: they are kept.</summary>
    public int Years { get; set; }

    /// <summary>Whether comments, on decisions and on findings, are replaced then, too.</summary>
    public bool Texts { get; set; }

    internal RetentionRule Rule => new(Years, Texts);
}
