using Laygate.Reading.RuleFiles;

namespace Laygate.Checking.Cases;

/// <summary>A specification of one's own laid into the shipped rule book, so that the cases of its rules run on the shipped base plans and its own.</summary>
/// <param name="book">The shipped folder <c>rules</c>.</param>
/// <param name="own">The folder of the specification.</param>
/// <param name="name">Name of the specification.</param>
public sealed class SpecificationUnderTest(IRuleFolder book, IRuleFolder own, string name) : IRuleFolder
{
    private const string Bases = "bases/";

    private readonly string prefix = $"specifications/{name}/";

    /// <inheritdoc/>
    public string Name => book.Name;

    /// <inheritdoc/>
    public IReadOnlyList<string> Files =>
    [
        .. book.Files.Where(file => !file.StartsWith(prefix, StringComparison.Ordinal)),
        .. own.Files.Where(file => !file.StartsWith(Bases, StringComparison.Ordinal)).Select(file => prefix + file),
        .. own.Files.Where(file => file.StartsWith(Bases, StringComparison.Ordinal) && !book.Files.Contains(file, StringComparer.Ordinal)),
    ];

    /// <inheritdoc/>
    public byte[] Read(string file) => OwnName(file) is { } inside ? own.Read(inside) : book.Read(file);

    /// <inheritdoc/>
    public string Shown(string file) => OwnName(file) is { } inside ? own.Shown(inside) : book.Shown(file);

    private string? OwnName(string file) =>
        file.StartsWith(prefix, StringComparison.Ordinal) ? file[prefix.Length..]
        : file.StartsWith(Bases, StringComparison.Ordinal) && !book.Files.Contains(file, StringComparer.Ordinal) ? file : null;
}
