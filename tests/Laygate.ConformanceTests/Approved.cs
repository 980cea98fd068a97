using Snapshooter.Xunit;

namespace Laygate.ConformanceTests;

/// <summary>Approved outputs, held strictly: a missing one fails. With <c>LAYGATE_APPROVE</c> set they are written anew, to be read in the diff.</summary>
internal static class Approved
{
    public static readonly bool Approving = Environment.GetEnvironmentVariable("LAYGATE_APPROVE") is { Length: > 0 };

    public static void Match(string text, string name, [System.Runtime.CompilerServices.CallerFilePath] string caller = "")
    {
        Environment.SetEnvironmentVariable("SNAPSHOOTER_STRICT_MODE", Approving ? "off" : "on");
        var file = Path.Combine(Path.GetDirectoryName(caller)!, "__snapshots__", $"{name}.snap");
        if (Approving && File.Exists(file))
        {
            File.Delete(file);
        }

        Snapshot.Match(text, name);
    }

    /// <summary>Compares a file of the repository with what it must hold, or writes it when approving.</summary>
    public static void File_holds(string path, string expected)
    {
        var full = Path.Combine(Repository.Root, path);
        if (Approving)
        {
            File.WriteAllText(full, expected);
        }

        Assert.True(File.Exists(full), $"{path} is missing; write it with LAYGATE_APPROVE=1.");
        Assert.Equal(expected, File.ReadAllText(full));
    }
}
