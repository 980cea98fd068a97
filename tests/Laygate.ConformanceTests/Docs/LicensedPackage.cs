using System.Text.Json.Nodes;
using System.Xml.Linq;

namespace Laygate.ConformanceTests.Docs;

/// <summary>A package with what it states about its licence.</summary>
/// <param name="Name">Name.</param>
/// <param name="Version">Version.</param>
/// <param name="Licence">SPDX expression; what it states instead where it gives none.</param>
/// <param name="Copyright">Copyright, or the authors where none is stated.</param>
internal sealed record LicensedPackage(string Name, string Version, string Licence, string Copyright)
{
    // Addresses stand in packages from before there were expressions. The repository of xunit is under Apache-2.0, as its newer packages say.
    private static readonly Dictionary<string, string> ByAddress = new(StringComparer.Ordinal)
    {
        ["https://raw.githubusercontent.com/xunit/xunit/master/license.txt"] = "Apache-2.0",
    };

    /// <summary>The packages that the lock files below a folder name, as they were restored.</summary>
    public static IReadOnlyList<LicensedPackage> Restored(string folder) =>
    [
        .. Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "packages.lock.json", SearchOption.AllDirectories)
            .SelectMany(Locked).Distinct()
            .OrderBy(package => package.Name, StringComparer.OrdinalIgnoreCase).ThenBy(package => package.Version, StringComparer.Ordinal)
            .Select(package => Read(package.Name, package.Version)),
    ];

    /// <summary>The packages that a lock file of npm names.</summary>
    public static IReadOnlyList<LicensedPackage> OfNode(string file) =>
    [
        .. JsonNode.Parse(Repository.Bytes(file))!["packages"]!.AsObject().Where(package => package.Key.Length > 0)
            .Select(package => new LicensedPackage(
                package.Key[(package.Key.LastIndexOf("node_modules/", StringComparison.Ordinal) + "node_modules/".Length)..],
                package.Value!["version"]!.GetValue<string>(), package.Value["license"]?.GetValue<string>() ?? "none stated", string.Empty))
            .Distinct()
            .OrderBy(package => package.Name, StringComparer.Ordinal).ThenBy(package => package.Version, StringComparer.Ordinal),
    ];

    private static IEnumerable<(string Name, string Version)> Locked(string file) =>
        from framework in JsonNode.Parse(File.ReadAllBytes(file))!["dependencies"]!.AsObject()
        from package in framework.Value!.AsObject()
        where package.Value!["type"]!.GetValue<string>() is not "Project"
        select (package.Key, package.Value!["resolved"]!.GetValue<string>());

    private static LicensedPackage Read(string name, string version)
    {
        var folder = Path.Combine(Store(), name.ToLowerInvariant(), version);
        var metadata = XDocument.Load(Path.Combine(folder, $"{name.ToLowerInvariant()}.nuspec")).Root!.Elements().Single(element => element.Name.LocalName is "metadata");
        string? Value(string key) => metadata.Elements().FirstOrDefault(element => string.Equals(element.Name.LocalName, key, StringComparison.Ordinal))?.Value.Trim();
        var licence = metadata.Elements().FirstOrDefault(element => element.Name.LocalName is "license");
        return new LicensedPackage(
            Value("id")!,
            version,
            licence?.Attribute("type")?.Value switch
            {
                "expression" => licence.Value.Trim(),
                "file" => OfText(Path.Combine(folder, licence.Value.Trim())),
                _ => Value("licenseUrl") is { } address ? ByAddress.GetValueOrDefault(address, address) : "none stated",
            },
            (Value("copyright") is { Length: > 0 } copyright ? copyright : $"authors: {Value("authors")}").Replace("|", "\\|", StringComparison.Ordinal));
    }

    // A file that is not one of the known texts keeps its name, which no list allows.
    private static string OfText(string file)
    {
        var text = string.Join(' ', File.ReadAllText(file).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return text.Contains("Permission is hereby granted, free of charge, to any person obtaining a copy", StringComparison.Ordinal)
            && text.Contains("The above copyright notice and this permission notice shall be included", StringComparison.Ordinal)
            ? "MIT"
            : $"file {Path.GetFileName(file)}";
    }

    private static string Store() => Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } stated
        ? stated
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
}
