using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Laygate.Rules.Definitions;

namespace Laygate.Reading.RuleFiles;

/// <summary>The shipped rule book as one file: definitions that were read, bound and checked when the program was built.</summary>
/// <param name="General">The general book.</param>
/// <param name="Specifications">The shipped specifications.</param>
/// <param name="ContentHash">SHA-256 of the text files it was made from, lower-case hex.</param>
public sealed record RulePack(BookDefinition General, IReadOnlyList<Specification> Specifications, string ContentHash)
{
    /// <summary>Name of the file beside the program.</summary>
    public const string FileName = "rules.pack.json";

    /// <summary>Finds a shipped specification.</summary>
    /// <returns>The specification, or null.</returns>
    public Specification? Find(string name) =>
        Specifications.FirstOrDefault(specification => string.Equals(specification.Name, name, StringComparison.Ordinal));

    /// <summary>Reads a pack.</summary>
    /// <param name="bytes">The file.</param>
    /// <exception cref="InvalidDataException">The file is no pack of this version of the program.</exception>
    public static RulePack Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            // Nulls are not written, so a missing key is no error of the format; a pack without its parts is.
            return JsonSerializer.Deserialize(bytes, RulePackJson.Default.RulePack) is { General: not null, Specifications: not null, ContentHash: not null } pack
                ? pack
                : throw new JsonException("A part is missing.");
        }
        catch (JsonException error)
        {
            throw new InvalidDataException("The rule pack beside the program is damaged or belongs to another version; install the program again.", error);
        }
    }

    /// <summary>Writes the pack; the same pack gives the same bytes.</summary>
    public byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(this, RulePackJson.Default.RulePack);

    /// <summary>Hash of the text files of a rule book; cases and base plans are no part of it.</summary>
    /// <param name="folder">The folder <c>rules</c>.</param>
    public static string HashOf(IRuleFolder folder)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in folder.Files.Where(IsHashed).Order(StringComparer.Ordinal))
        {
            var bytes = folder.Read(file);
            hash.AppendData(System.Text.Encoding.UTF8.GetBytes(FormattableString.Invariant($"{file}\n{bytes.Length}\n")));
            hash.AppendData(bytes);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static bool IsHashed(string file) =>
        file.EndsWith("/rule.yaml", StringComparison.Ordinal) || file.EndsWith("/specification.yaml", StringComparison.Ordinal)
        || string.Equals(file, "sources.yaml", StringComparison.Ordinal);
}

/// <summary>JSON of the rule pack, generated when the program is compiled: no reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    IgnoreReadOnlyProperties = true,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(RulePack))]
internal sealed partial class RulePackJson : JsonSerializerContext;
