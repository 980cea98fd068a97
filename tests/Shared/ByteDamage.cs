using System.Text;

namespace Laygate.Tests;

/// <summary>Damages a text file as a bad disk, a cut transfer or a slip of the editor would, and tells whether a place lies in a file.</summary>
internal static class ByteDamage
{
    private static readonly byte[][] Pieces =
        [.. new[] { "[", "]", "{", "}", ": ", ":", "- ", "? ", "&a ", "*a", "!x ", "|", ">", "'", "\"", "\t", "\n", "\r", "\r\n", "#", "%", "@", "---\n", "...\n", "<<: ", "\\", ",", "\0", "é", "\u2028", "\U0001F600", "\"\\UFFFFFFFF\"", "\"\\ud83d\"" }.Select(Encoding.UTF8.GetBytes)];

    /// <summary>Makes one to three changes: another byte, some taken out, a piece of syntax put in, some said twice.</summary>
    public static byte[] Damaged(IReadOnlyList<byte> sample, Random random)
    {
        var bytes = sample.ToList();
        for (var change = random.Next(1, 4); change > 0 && bytes.Count > 0; change--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0: bytes[at] = (byte)random.Next(256); break;
                case 1: bytes.RemoveRange(at, Math.Min(random.Next(1, 8), bytes.Count - at)); break;
                case 2: bytes.InsertRange(at, Pieces[random.Next(Pieces.Length)]); break;
                default: bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 30), bytes.Count - at))); break;
            }
        }

        return [.. bytes];
    }

    /// <summary>Whether a stretch, lines and columns from 1, lies in a file.</summary>
    /// <param name="lines">The lines of the file.</param>
    /// <param name="line">First line.</param>
    /// <param name="column">First column.</param>
    /// <param name="endLine">Last line.</param>
    /// <param name="endColumn">Column behind the last character.</param>
    public static bool IsInside(string[] lines, int line, int column, int endLine, int endColumn) =>
        line >= 1 && endLine >= line && endLine <= lines.Length
        && column >= 1 && column <= lines[line - 1].Length + 1
        && endColumn >= 1 && (endLine, endColumn).CompareTo((line, column)) >= 0;

    /// <summary>The lines of a file as a reader counts them; a byte-order mark is no part of the first.</summary>
    public static string[] LinesOf(byte[] bytes) =>
        Encoding.UTF8.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(Encoding.UTF8.Preamble.Length) : bytes).Split('\n');
}
