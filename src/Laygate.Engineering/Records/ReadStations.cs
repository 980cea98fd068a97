namespace Laygate.Engineering.Records;

/// <summary>How stations of a record are read.</summary>
internal static class ReadStations
{
    /// <summary>How far beyond its run a station may be written and still lie in it, m: half of the metre to which stations are read at best. Judgement.</summary>
    public const double Slack = 0.5;
}
