namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>How a figure of the catalogue is known.</summary>
public enum SourceEvidence
{
    /// <summary>Read in the source named.</summary>
    Read,

    /// <summary>Read in a carrier that reproduces a named source.</summary>
    SecondHand,

    /// <summary>From memory, or from a carrier of low authority.</summary>
    Recalled,

    /// <summary>Worked out from other figures; as strong as the weakest of them.</summary>
    Derived,

    /// <summary>Engineering judgement.</summary>
    Judgement,
}
