using System.IO.Compression;
using System.Text;
using Laygate.Register;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Shared;

/// <summary>All that a register holds, column by column, as text: what is packed is unpacked.</summary>
internal static class WholeDatabase
{
    /// <summary>Each value of each row of each table, and of a SQLite register the bytes of its files, too.</summary>
    public static async Task<IReadOnlyList<(string Where, string Text)>> ReadAsync(RegisterDatabase database)
    {
        var values = new List<(string, string)>();
        await using var context = database.Open();
        await context.Database.OpenConnectionAsync();
        foreach (var table in await context.Database.SqlQueryRaw<string>(context.Database.IsSqlite()
            ? "SELECT name AS \"Value\" FROM sqlite_master WHERE type = 'table'"
            : "SELECT table_name::text AS \"Value\" FROM information_schema.tables WHERE table_schema = 'public'").ToListAsync())
        {
            await using var command = context.Database.GetDbConnection().CreateCommand();
#pragma warning disable CA2100 // The name of a table of our own.
            command.CommandText = $"SELECT * FROM \"{table}\"";
#pragma warning restore CA2100
            await using var reader = await command.ExecuteReaderAsync();
            while (await reader.ReadAsync())
            {
                for (var column = 0; column < reader.FieldCount; column++)
                {
                    values.AddRange(Texts(reader.GetValue(column)).Select(text => ($"{table}.{reader.GetName(column)}", text)));
                }
            }
        }

        if (database.Settings.Engine == Engine.Sqlite)
        {
            values.AddRange(new[] { string.Empty, "-wal" }.Select(ending => database.Settings.Connection + ending).Where(File.Exists).Select(file => (Path.GetFileName(file), Encoding.Latin1.GetString(ReadShared(file)))));
        }

        return values;
    }

    private static IEnumerable<string> Texts(object value)
    {
        if (value is not byte[] bytes)
        {
            return value is string text ? [text] : [];
        }

        var unpacked = Packed.All(bytes);
        var plain = Encoding.UTF8.GetString(unpacked);
        List<string> texts = [Encoding.UTF8.GetString(bytes), plain, System.Net.WebUtility.HtmlDecode(plain.Contains("\\u", StringComparison.Ordinal) ? System.Text.RegularExpressions.Regex.Unescape(Safe(plain)) : plain)];
        if (bytes.AsSpan().StartsWith("PK\u0003\u0004"u8))
        {
            using var zip = new ZipArchive(new MemoryStream(bytes));
            foreach (var entry in zip.Entries)
            {
                using var reader = new StreamReader(entry.Open());
                texts.Add(reader.ReadToEnd());
            }
        }

        return texts;
    }

    // Only escapes of letters are undone.
    private static string Safe(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"\\(?!u[0-9a-fA-F]{4})", " ", System.Text.RegularExpressions.RegexOptions.None, Patience.Longest);

    private static byte[] ReadShared(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}

/// <summary>Finds no name anywhere.</summary>
internal sealed class NoNames : INameReplacer
{
    public ReplacedContents Replace(IReadOnlyList<KeptContent> contents) => new([], [], text => text);
}

/// <summary>Takes one word for a name, wherever it stands.</summary>
internal sealed class OneName(string name) : INameReplacer
{
    public ReplacedContents Replace(IReadOnlyList<KeptContent> contents)
    {
        string Without(string text) => text.Replace(name, SaltedText.Name, StringComparison.Ordinal);
        return new([.. contents.Where(one => Encoding.UTF8.GetString(one.Bytes).Contains(name, StringComparison.Ordinal)).Select(one => new ReplacedContent(one, Encoding.UTF8.GetBytes(Without(Encoding.UTF8.GetString(one.Bytes)))))], [name], Without);
    }
}
