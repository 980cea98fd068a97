using System.ComponentModel;
using System.Diagnostics;
using Laygate.Cli.Arguments;
using Laygate.Cli.Output;

namespace Laygate.Cli.Files;

/// <summary>Asks git about the repository that the process stands in.</summary>
internal sealed class Revisions
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);
    private readonly string top;

    /// <summary>Finds the repository.</summary>
    /// <exception cref="ArgumentProblem">There is none, or no git.</exception>
    public Revisions()
    {
        var (code, output) = Git(Directory.GetCurrentDirectory(), "rev-parse", "--show-toplevel");
        top = code == 0
            ? Streams.Utf8.GetString(output).Trim()
            : throw new ArgumentProblem("This folder is in no git repository, so nothing can be compared with a revision.");
    }

    /// <summary>Files that differ from a revision, as full paths: changed, new and deleted ones, committed or not; those that git ignores are left out.</summary>
    /// <exception cref="ArgumentProblem">There is no such revision.</exception>
    public IReadOnlySet<string> ChangedSince(string revision)
    {
        Require(revision);
        var changed = Names(Git(top, "diff", "--name-only", "--no-renames", "-z", revision, "--"));
        var added = Names(Git(top, "ls-files", "--others", "--exclude-standard", "-z"));
        return changed.Concat(added).Select(name => Path.GetFullPath(Path.Combine(top, name))).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>The bytes of a file as they stood at a revision; null when it had no such file.</summary>
    /// <exception cref="ArgumentProblem">There is no such revision.</exception>
    public byte[]? Show(string revision, string file)
    {
        Require(revision);
        var name = Path.GetRelativePath(top, Path.GetFullPath(file)).Replace('\\', '/');
        var (code, output) = Git(top, "show", $"{revision}:{name}");
        return code == 0 ? output : null;
    }

    /// <summary>Sees to it that there is a revision; one that begins with a dash would be taken for an option.</summary>
    /// <exception cref="ArgumentProblem">There is no such revision.</exception>
    public void Require(string revision)
    {
        if (revision.StartsWith('-') || Git(top, "rev-parse", "--verify", "--quiet", revision + "^{commit}").Code != 0)
        {
            throw new ArgumentProblem($"There is no revision `{revision}` in this repository. A shallow clone may lack it: fetch it first.");
        }
    }

    private static IEnumerable<string> Names((int Code, byte[] Output) answer) => answer.Code == 0
        ? Streams.Utf8.GetString(answer.Output).Split('\0', StringSplitOptions.RemoveEmptyEntries)
        : throw new ArgumentProblem("git could not list the changed files.");

    private static (int Code, byte[] Output) Git(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo("git") { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            using var git = Process.Start(start) ?? throw new ArgumentProblem("git could not be started.");
            var errors = git.StandardError.ReadToEndAsync();
            using var output = new MemoryStream();
            git.StandardOutput.BaseStream.CopyTo(output);
            if (!git.WaitForExit(Longest))
            {
                git.Kill(entireProcessTree: true);
                throw new ArgumentProblem("git did not answer within a minute.");
            }

            _ = errors.GetAwaiter().GetResult();
            return (git.ExitCode, output.ToArray());
        }
        catch (Win32Exception)
        {
            throw new ArgumentProblem("git is needed for this and cannot be found.");
        }
    }
}
