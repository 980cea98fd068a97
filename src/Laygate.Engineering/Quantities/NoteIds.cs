namespace Laygate.Engineering.Quantities;

/// <summary>Ids of the remarks that quantities hand out. Reporting words them; each says which arguments come with it.</summary>
public static class NoteIds
{
    /// <summary>The plan has no two runs on both sides of a joint, or does not say which. Argument: <c>joint</c>, an id.</summary>
    public const string NoNeighbour = "no-neighbour";

    /// <summary>Two runs lie side by side and no joint is stated between them. Arguments: <c>run</c> and <c>other</c>, ids.</summary>
    public const string SideBySide = "side-by-side";

    /// <summary>A quantity asks for itself: an error of the program. Argument: <c>quantity</c>, a name.</summary>
    public const string Circular = "circular";

    /// <summary>The aggregate size is a maximum size; which sieve lies below it must be read from the sieve series. Argument: <c>sieve</c>, a designation.</summary>
    public const string SizeBasisMaximum = "size-basis-maximum";

    /// <summary>Stated numbers lie outside the range of the formula, for example 8000 passes. Arguments: <c>quantity</c>, a name; <c>numbers</c>, what went in; <c>range</c>, in which it holds.</summary>
    public const string OutsideFormula = "outside-formula";

    /// <summary>Nothing shows that the passes reach the density. Arguments: <c>passes</c>, <c>behind</c>, <c>target</c>, numbers.</summary>
    public const string PassesUnproved = "passes-unproved";

    /// <summary>The value only exists where two courses are laid hot-on-hot by this paver. No arguments.</summary>
    public const string NoPair = "no-pair";

    /// <summary>More than two mixes pass through one feeder; no relation is known for it. Argument: <c>count</c>, a number.</summary>
    public const string TooManyMixes = "too-many-mixes";

    /// <summary>The pair is laid in one strip and has no longitudinal joint. No arguments.</summary>
    public const string OneStrip = "one-strip";

    /// <summary>The shift states no offset from UTC; its local times are compared with each other only. No arguments.</summary>
    public const string NoZone = "no-zone";

    /// <summary>The stated hours of weather begin after laying does: <c>begin</c> and <c>laying</c>, moments.</summary>
    public const string HoursBeginLate = "hours-begin-late";

    /// <summary>The stated hours of weather end before laying does: <c>end</c> and <c>laying</c>, moments.</summary>
    public const string HoursEndEarly = "hours-end-early";

    /// <summary>Two neighbouring hours of weather lie too far apart for a straight line: <c>from</c> and <c>to</c>, moments.</summary>
    public const string HoursGap = "hours-gap";

    /// <summary>Two neighbouring hours of weather lie far apart; a straight line bridges them: <c>from</c> and <c>to</c>, moments.</summary>
    public const string HoursBridged = "hours-bridged";

    /// <summary>The temperature is not reached within the time that is solved for. Arguments: <c>quantity</c>, a name; <c>within</c>, a number in h; <c>numbers</c>, what went in.</summary>
    public const string NotReached = "not-reached";

    /// <summary>The plan's limit is stated for another place than the one that the model predicts. Arguments: <c>stated</c> and <c>predicted</c>, words of the list of places.</summary>
    public const string OtherPlace = "other-place";

    /// <summary>The cooling of the mat could not be solved. Arguments: <c>reason</c>, a word of the solver; <c>numbers</c>, what went in.</summary>
    public const string CoolingFailed = "cooling-failed";

    /// <summary>The course is not laid on a hot or warm one. No arguments.</summary>
    public const string LaidCold = "laid-cold";

    /// <summary>An entry of a list is there, but says too little to count, or less than its kind is asked for: <c>kind</c>, <c>entry</c>, <c>fields</c>, <c>who</c>.</summary>
    public const string EntryThin = "entry-thin";

    /// <summary>The plan's own data show a condition of the site: <c>meaning</c> of the condition; <c>at</c>, address and key of the data.</summary>
    public const string ShownByData = "shown-by-data";

    /// <summary>Other data of the plan say too little to deny a condition of the site: <c>meaning</c> of the condition; <c>at</c>, address and key of the data.</summary>
    public const string LeftOpen = "left-open";

    /// <summary>A date that comes too late or lies too far back: <c>at</c>, address and key; <c>date</c>, <c>limit</c>, days; <c>what</c>, what the other day is.</summary>
    public const string DatedAfter = "dated-after";

    /// <summary>One person stands for two: <c>at</c>, address and key; <c>who</c>, as stated.</summary>
    public const string SamePerson = "same-person";

    /// <summary>A list lacks an entry: <c>list</c>, <c>kind</c>, <c>fields</c> that it needs.</summary>
    public const string EntryMissing = "entry-missing";

    /// <summary>Mix on the road, waiting and in buffers at one time, at most. Argument: <c>mass</c>, a number in t.</summary>
    public const string CommittedMix = "committed-mix";

    /// <summary>The plan lets one course of a pair go on alone; whether that course passes by itself is judged with a plan of its own. Argument: <c>course</c>, an id.</summary>
    public const string OneCourseGoesOn = "one-course-goes-on";

    /// <summary>Rollers keep a stated distance from an edge; no published figure fits every edge. Argument: <c>distance</c>, a length.</summary>
    public const string RollerToEdge = "roller-to-edge";

    /// <summary>The quantity is left out because a quick check was asked for. No arguments.</summary>
    public const string QuickCheck = "quick-check";
}
