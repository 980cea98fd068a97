using System.Text;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>Changes that know lines or bytes only.</summary>
internal static class TextDamage
{
    /// <summary>A line gone, doubled, moved, set in or out; the text cut off; other line ends.</summary>
    public static string Lines(string text, Random random)
    {
        var lines = text.Split('\n').ToList();
        var at = random.Next(lines.Count);
        switch (random.Next(9))
        {
            case 0: lines.RemoveAt(at); break;
            case 1: lines.Insert(at, lines[at]); break;
            case 2: (lines[at], lines[^1]) = (lines[^1], lines[at]); break;
            case 3: lines[at] = " " + lines[at]; break;
            case 4: lines[at] = lines[at].Length > 0 ? lines[at][1..] : "\t"; break;
            case 5: return text[..random.Next(text.Length + 1)];
            case 6: return text.Replace("\n", random.Next(2) == 0 ? "\r\n" : "\r", StringComparison.Ordinal);
            case 7: lines.Insert(at, Fragments.Any(random)); break;
            default: lines[at] += random.Next(2) == 0 ? " # " + Fragments.Any(random) : Fragments.Any(random); break;
        }

        return string.Join('\n', lines);
    }

    /// <summary>The beginning of one text and the end of another.</summary>
    public static string Crossed(string first, string second, Random random)
    {
        var (head, tail) = (first.Split('\n'), second.Split('\n'));
        return string.Join('\n', head.Take(random.Next(head.Length + 1)).Concat(tail.Skip(random.Next(tail.Length + 1))));
    }

    /// <summary>Another encoding, a mark at the beginning, zeros behind.</summary>
    public static byte[] Encoded(string text, Random random) => random.Next(8) switch
    {
        0 => [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)],
        1 => [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(text)],
        2 => Encoding.BigEndianUnicode.GetBytes(text),
        3 => [.. Encoding.UTF32.Preamble, .. Encoding.UTF32.GetBytes(text)],
        4 => Encoding.Latin1.GetBytes(text + "é°²"),
        5 => [.. Encoding.UTF8.GetBytes(text), .. new byte[random.Next(1, 600)]],
        6 => [.. Encoding.UTF8.GetBytes(text), 0xC0, 0x80],
        _ => [0x1F, 0x8B, .. Encoding.UTF8.GetBytes(text)],
    };
}
