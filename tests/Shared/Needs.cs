namespace Laygate.Tests;

/// <summary>
/// What a test needs besides the SDK. The full run (<c>LAYGATE_FULL_RUN</c>, set by <c>.ci/run</c>) installs the means and demands that such a test runs;
/// elsewhere it is skipped with a reason, whether the means are there or not, so that a usual run is the same and as short on every machine.
/// </summary>
internal static class Needs
{
    /// <summary>A browser: its path. The one without windows, if there, takes a fraction of the time to start.</summary>
    public static string Chromium() =>
        Path(File.Exists("/usr/bin/chromium-headless-shell") ? "/usr/bin/chromium-headless-shell" : "/usr/bin/chromium", "Chromium is not on this machine: install Debian's package chromium-headless-shell.");

    /// <summary>The folder of the programs of a PostgreSQL server (<c>initdb</c>, <c>pg_ctl</c>, <c>postgres</c>).</summary>
    public static string PostgreSql()
    {
        const string Root = "/usr/lib/postgresql";
        string? newest = Directory.Exists(Root)
            ? Directory.GetDirectories(Root).Select(folder => System.IO.Path.Combine(folder, "bin"))
                .Where(folder => File.Exists(System.IO.Path.Combine(folder, "postgres"))).Order(StringComparer.Ordinal).LastOrDefault()
            : null;
        return Path(newest ?? Root + "/15/bin/postgres", "No PostgreSQL server is on this machine: install Debian's package postgresql.");
    }

    /// <summary>A file of the public checkers in <c>tests/Tools</c>, after <c>npm ci --prefix tests/Tools</c>.</summary>
    public static string Tool(string relative) =>
        Path(
            System.IO.Path.Combine(SourceTree.Root, "tests", "Tools", "node_modules", relative),
            "The public checkers are not installed: run npm ci --prefix tests/Tools.");

    /// <summary>Python 3, for the script that invents records.</summary>
    public static string Python() => Path("/usr/bin/python3", "Python 3 is not on this machine: install Debian's package python3.");

    private static string Path(string path, string reason)
    {
        Skip.IfNot(FullRun.IsAsked, $"Needs more than the SDK: {FullRun.HowToAsk}");
        return File.Exists(path) || Directory.Exists(path) ? path : throw new FileNotFoundException(reason, path);
    }
}
