namespace Laygate.Model.Plans;

/// <summary>A local date and time as stated, with its offset where one was stated.</summary>
/// <param name="Local">Local date and time.</param>
/// <param name="Offset">Offset from UTC; null when the plan leaves it to the shift.</param>
public sealed record Moment(DateTime Local, TimeSpan? Offset);
