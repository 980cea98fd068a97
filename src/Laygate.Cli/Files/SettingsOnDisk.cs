using Laygate.Reading.RuleFiles;
using Laygate.Rules.Results;

namespace Laygate.Cli.Files;

/// <summary>Settings that were found, with paths as the process can open them.</summary>
/// <param name="File">The file, as it is to be shown.</param>
/// <param name="Settings">What it asks for; null when it cannot be read.</param>
/// <param name="Problems">Why it cannot be read.</param>
internal sealed record FoundSettings(string File, RepositorySettings? Settings, IReadOnlyList<Problem> Problems);

/// <summary>Finds the settings that hold for a plan: the nearest <c>laygate.yaml</c> in its folder or above it.</summary>
internal sealed class SettingsOnDisk
{
    private readonly Dictionary<string, FoundSettings?> byFolder = new(StringComparer.Ordinal);

    /// <summary>The settings for a folder; null when there are none up to the root.</summary>
    public FoundSettings? For(string folder)
    {
        if (byFolder.TryGetValue(folder, out var known))
        {
            return known;
        }

        var file = Path.Combine(folder, SettingsFile.Name);
        var found = File.Exists(file) ? Read(file, folder) : Path.GetDirectoryName(folder) is { } above ? For(above) : null;
        return byFolder[folder] = found;
    }

    private static FoundSettings Read(string file, string folder)
    {
        var shown = Shown(file);
        try
        {
            var (settings, problems) = SettingsFile.Read(shown, File.ReadAllBytes(file));
            return new FoundSettings(shown, settings is null ? null : FromHere(settings, folder), problems);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new FoundSettings(shown, null, [new Problem(shown, "The settings cannot be read.", "Check that you may read the file.", null)]);
        }
    }

    private static RepositorySettings FromHere(RepositorySettings settings, string folder) => settings with
    {
        Plans = [.. settings.Plans.Select(plan => Shown(Path.Combine(folder, plan)))],
        Rules = [.. settings.Rules.Select(rule => Path.Exists(Path.Combine(folder, rule)) || rule.Contains('/', StringComparison.Ordinal) ? Shown(Path.Combine(folder, rule)) : rule)],
        Departures = [.. settings.Departures.Select(file => Shown(Path.Combine(folder, file)))],
        Baseline = settings.Baseline is { } baseline ? Shown(Path.Combine(folder, baseline)) : null,
    };

    private static string Shown(string path) => Path.GetRelativePath(Directory.GetCurrentDirectory(), path).Replace('\\', '/');
}
