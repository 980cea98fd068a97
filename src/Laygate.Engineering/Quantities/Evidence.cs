namespace Laygate.Engineering.Quantities;

/// <summary>How a figure is known.</summary>
public enum Evidence
{
    /// <summary>Memory, or a carrier that is no publication of its own.</summary>
    Recalled,

    /// <summary>Engineering judgement of this project.</summary>
    Judgement,

    /// <summary>Common practice without a published source.</summary>
    CommonPractice,

    /// <summary>Derived from other figures; as strong as the weakest of them.</summary>
    Derived,

    /// <summary>A carrier that reproduces a named edition and clause.</summary>
    SecondHand,

    /// <summary>Read in the publication.</summary>
    Read,

    /// <summary>Confirmed by the checking side: who, when, edition, page.</summary>
    Confirmed,
}
