using Laygate.Cli.Arguments;
using Laygate.Rules.Results;
using Microsoft.Extensions.FileSystemGlobbing;
using Microsoft.Extensions.FileSystemGlobbing.Abstractions;

namespace Laygate.Cli.Files;

/// <summary>Turns the names of the command line into inputs. Patterns are expanded here, because not every shell does it.</summary>
internal sealed class PlanFiles(Func<Stream> standardInput, string stdinName)
{
    /// <summary>Bytes beyond which nothing is read on: more than any plan may have, so that an endless input ends.</summary>
    public const int LongestRead = 4 << 20;

    /// <summary>The inputs in the given order, each file once.</summary>
    /// <exception cref="ArgumentProblem">A name is empty.</exception>
    public IReadOnlyList<PlanInput> Find(IReadOnlyList<string> names)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return [.. names.SelectMany(Find).Where(input => input.Problem is not null || seen.Add(input.Identity))];
    }

    private IEnumerable<PlanInput> Find(string name)
    {
        if (name is "-")
        {
            return [new PlanInput(stdinName, "-", () => ReadAll(standardInput(), LongestRead), null)];
        }

        if (name.Length == 0)
        {
            throw new ArgumentProblem("The name of a file is empty.");
        }

        if (File.Exists(name))
        {
            return [OfFile(name)];
        }

        if (Directory.Exists(name))
        {
            return [Refused(name, "This is a folder, not a plan.", $"Write `{name.TrimEnd('/', '\\')}/*.yaml` to check the plans in it.")];
        }

        return name.Contains('*', StringComparison.Ordinal)
            ? Matching(name)
            : [Refused(name, "There is no such file.", "Check the name and the folder you are in.")];
    }

    private static IReadOnlyList<PlanInput> Matching(string pattern)
    {
        var path = pattern.Replace('\\', '/');
        var cut = path.LastIndexOf('/', path.IndexOf('*', StringComparison.Ordinal)) + 1;
        var folder = path[..cut];
        var root = new DirectoryInfo(cut == 0 ? "." : folder);
        if (!root.Exists)
        {
            return [Refused(pattern, "No file matches.", $"There is no folder `{folder}`.")];
        }

        var found = new Matcher(StringComparison.Ordinal).AddInclude(path[cut..]).Execute(new DirectoryInfoWrapper(root));
        var files = found.Files.Select(match => folder + match.Path).Order(StringComparer.Ordinal).Select(OfFile).ToList();
        return files.Count > 0 ? files : [Refused(pattern, "No file matches.", "`*` stands for any name, `**` for any folders.")];
    }

    private static PlanInput OfFile(string name) => new(name, Path.GetFullPath(name), () => ReadFile(name), null);

    private static PlanInput Refused(string name, string message, string hint) =>
        new(name, name, null, new Problem(name, message, hint, null));

    /// <summary>The bytes of a file, but no more than one beyond a bound, however long it is.</summary>
    /// <param name="name">Its path.</param>
    /// <param name="most">The bound, bytes.</param>
    public static byte[] ReadFile(string name, int most = LongestRead)
    {
        using var stream = new FileStream(name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return ReadAll(stream, most);
    }

    private static byte[] ReadAll(Stream stream, int most)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[64 << 10];
        int count;
        while (bytes.Length <= most && (count = stream.Read(buffer)) > 0)
        {
            bytes.Write(buffer, 0, count);
        }

        return bytes.ToArray();
    }
}
