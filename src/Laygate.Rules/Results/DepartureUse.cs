using Laygate.Rules.Definitions;

namespace Laygate.Rules.Results;

/// <summary>What became of a departure in one check. Everything but <see cref="Holds"/> is a warning of its own.</summary>
public enum DepartureState
{
    /// <summary>It covers its finding.</summary>
    Holds,

    /// <summary>The day of checking lies behind its last day.</summary>
    Expired,

    /// <summary>The day of checking lies before the day of the permission.</summary>
    NotYet,

    /// <summary>The finding lies further beyond its bound than the value that is accepted.</summary>
    Exceeded,

    /// <summary>The finding has a value, and the departure accepts none.</summary>
    NoValueAccepted,

    /// <summary>The plan has no element of that address.</summary>
    NoElement,

    /// <summary>The rule is not in force, or gives no finding on that kind of element.</summary>
    NoFinding,

    /// <summary>The finding passes, is open or does not apply: there is nothing to permit.</summary>
    Unused,
}

/// <summary>A departure and what became of it.</summary>
/// <param name="Departure">The departure.</param>
/// <param name="State">What became of it.</param>
/// <param name="Status">Status of its finding without it; null where there is none.</param>
/// <param name="Outcome">Outcome of its finding; null where there is none.</param>
/// <param name="Value">Value of its finding; null where there is none.</param>
public sealed record DepartureUse(Departure Departure, DepartureState State, Status? Status, Outcome? Outcome, ShownValue? Value);
