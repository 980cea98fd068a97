using System.Text.Json;
using Laygate.Reporting.Runs;

namespace Laygate.Reporting.Json;

/// <summary>
/// Entries of a JSON array that must wait until what stands before them in the document is known. They are written with their place around
/// them, so that line breaks and indentation are those of the whole; the opening of that place is left out when they are copied.
/// </summary>
internal sealed class JsonTail : IDisposable
{
    private readonly Stream aside;
    private readonly long start;

    /// <summary>Begins.</summary>
    /// <param name="aside">An empty place; closed with this.</param>
    /// <param name="open">Opens what the array stands in, and the array.</param>
    public JsonTail(Stream aside, Action<Utf8JsonWriter> open)
    {
        this.aside = aside;
        Json = new Utf8JsonWriter(aside, JsonOutput.Options);
        open(Json);
        Json.Flush();
        start = aside.Position;
    }

    /// <summary>Writes the entries, and at the end what closes the array and all around it.</summary>
    public Utf8JsonWriter Json { get; }

    /// <summary>Whether nothing was written yet.</summary>
    public bool IsEmpty => Json.BytesPending == 0 && aside.Position == start;

    /// <summary>Copies what was written behind an array that was opened in the same place.</summary>
    public void CopyTo(Stream output)
    {
        Json.Flush();
        aside.CopyFrom(start, output);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Json.Reset(Stream.Null);
        Json.Dispose();
        aside.Dispose();
    }
}
