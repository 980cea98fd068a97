using System.Buffers.Text;
using Laygate.Reading.Sets;
using Laygate.Service.Api;
using Microsoft.Extensions.Primitives;

namespace Laygate.Service.Pages;

/// <summary>A checked plan that its result page carries, byte for byte, so that it can be submitted from there without being chosen again.</summary>
/// <param name="Plan">Name of the plan.</param>
/// <param name="Files">Names, and bytes in base 64: the plan or its archive alone, or the plan and what came with it.</param>
/// <param name="Wish">The other fields of the form with which it was checked.</param>
public sealed record KeptPlan(string Plan, IReadOnlyList<(string Name, string Bytes)> Files, IReadOnlyList<(string Name, string Value)> Wish)
{
    // A form that carries more would be refused for its size.
    private const int Largest = (SetLimits.Bytes / 4 * 3) - (64 << 10);

    /// <summary>What is carried of a plan; null where it is too large for that.</summary>
    internal static KeptPlan? Of(Sent sent, IFormCollection form)
    {
        List<SetFile> files = sent.Archive is { } archive ? [archive] : [new SetFile(sent.Name, sent.Text), .. sent.Files];
        return files.Sum(file => (long)file.Bytes.Length) > Largest ? null : new KeptPlan(
            sent.Name,
            [.. files.Select(file => (file.Name, Convert.ToBase64String(file.Bytes)))],
            [.. new[] { "rules", "outlook" }.Where(field => form[field].ToString().Length > 0).Select(field => (field, form[field].ToString()))]);
    }

    /// <summary>What a form carries.</summary>
    /// <param name="names">Names of the files.</param>
    /// <param name="bytes">Their bytes, in base 64.</param>
    /// <param name="plan">Name of the plan.</param>
    /// <exception cref="BadHttpRequestException">It carries nothing that can be read.</exception>
    /// <exception cref="UnusableSetException">The files are no set that can be used.</exception>
    internal static Sent Read(StringValues names, StringValues bytes, string? plan)
    {
        if (names.Count != bytes.Count || bytes.Any(file => !Base64.IsValid(file ?? string.Empty)))
        {
            throw new BadHttpRequestException("The form is not whole. Open the start page and choose the plan again.");
        }

        List<SetFile> files = [.. names.Zip(bytes, (name, file) => new SetFile(name ?? string.Empty, Convert.FromBase64String(file ?? string.Empty)))];
        return files is [var one] ? Sent.One(one.Name, one.Bytes, plan) : Sent.Of("form", files, plan);
    }
}
