namespace Laygate.Reporting.Runs;

/// <summary>Names of files as hosts want them.</summary>
internal static class FileNames
{
    /// <summary>The name with <c>/</c> between its parts and without <c>./</c> at its start.</summary>
    public static string Plain(string file)
    {
        var name = file.Replace('\\', '/');
        while (name.StartsWith("./", StringComparison.Ordinal))
        {
            name = name[2..];
        }

        return name;
    }

    /// <summary>Whether the name starts at a root, so that no base belongs to it.</summary>
    public static bool IsRooted(string file) =>
        file.StartsWith('/') || (file.Length > 2 && char.IsAsciiLetter(file[0]) && file[1] == ':' && file[2] == '/');

    /// <summary>The name as a URI reference: each part percent-encoded; a rooted one with the scheme <c>file</c>.</summary>
    public static string Uri(string file)
    {
        var plain = Plain(file);
        var parts = string.Join('/', plain.Split('/').Select(System.Uri.EscapeDataString));
        return !IsRooted(plain) ? parts : plain.StartsWith('/') ? $"file://{parts}" : $"file:///{plain[..2]}{parts[(parts.IndexOf('/', StringComparison.Ordinal))..]}";
    }
}
