using System.Reflection;

namespace Laygate.Service;

/// <summary>Texts that travel inside the program.</summary>
internal static class Asset
{
    /// <summary>One of them.</summary>
    /// <param name="name">Its name.</param>
    public static string Text(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
