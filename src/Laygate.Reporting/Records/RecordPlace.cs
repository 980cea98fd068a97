namespace Laygate.Reporting.Records;

/// <summary>Where a page of a record stands in a service that keeps records beside plans.</summary>
/// <param name="Back">Address of what it belongs to.</param>
/// <param name="Name">What that is called.</param>
/// <param name="Basis">By what the page is computed, in sentences.</param>
public sealed record RecordPlace(string Back, string Name, IReadOnlyList<string> Basis);
