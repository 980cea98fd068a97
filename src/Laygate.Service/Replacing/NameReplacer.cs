using System.IO.Compression;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Laygate.Reading.Personal;
using Laygate.Register;

namespace Laygate.Service.Replacing;

/// <summary>
/// Replaces names of people in all that is kept of a submission: in plans, files and records at the keys that hold them, and wherever else they stand as whole words; in reports and
/// documents likewise, together with each hash of a text that changes. Lines stay lines; nothing else is touched (decision 24).
/// </summary>
internal sealed partial class NameReplacer(NameRules rules) : INameReplacer
{
    /// <summary>What stands in the place of the hash of another text.</summary>
    public const string Hash = "(hash replaced)";

    // The earliest moment that an archive can state.
    private static readonly DateTimeOffset First = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    // How much of a hash pages show.
    private const int ShownHash = 12;

    /// <inheritdoc/>
    public ReplacedContents Replace(IReadOnlyList<KeptContent> contents)
    {
        var found = Found.In(contents);
        List<(string Old, string New)> words = [.. found.Names.Where(rules.IsPlain).SelectMany(NameRules.Forms).Distinct(StringComparer.Ordinal).OrderByDescending(form => form.Length).Select(form => (form, SaltedText.Name))];
        var texts = contents.Where(IsText).Select(content => (Content: content, Bytes: Text(content, found, words))).ToList();
        texts.AddRange(Archives(contents, texts));
        words.AddRange(found.Hashes.Where(hash => hash.Length >= ShownHash && NameRules.IsHash(hash)).SelectMany(hash => new[] { hash, hash[..ShownHash] }).Distinct(StringComparer.Ordinal).Select(hash => (hash, Hash)));
        words.AddRange(texts.Where(IsChanged).SelectMany(text => Hashes(text.Content.Bytes, text.Bytes)));
        var made = contents.Where(content => content.Kind is ContentKind.Report or ContentKind.Pictures or ContentKind.Document).Select(content => (Content: content, Bytes: Made(content, found, words)));
        return new ReplacedContents(
            [.. texts.Concat(made).Where(IsChanged).Select(one => new ReplacedContent(one.Content, one.Bytes))],
            found.Names,
            text => new EncodedText(text).With(words));
    }

    private static bool IsText(KeptContent content) => content.Kind is ContentKind.Text or ContentKind.File or ContentKind.Record;

    private static bool IsChanged((KeptContent Content, byte[] Bytes) one) => !one.Content.Bytes.AsSpan().SequenceEqual(one.Bytes);

    // The full one first: a short one is then only what stands by itself.
    private static IEnumerable<(string Old, string New)> Hashes(byte[] before, byte[] after)
    {
        var (old, put) = (Convert.ToHexStringLower(SHA256.HashData(before)), Convert.ToHexStringLower(SHA256.HashData(after)));
        return [(old, put), (old[..ShownHash], put[..ShownHash])];
    }

    private static byte[] Text(KeptContent content, Found found, List<(string Old, string New)> words)
    {
        if (found.Texts.GetValueOrDefault(content) is not { } text)
        {
            return Encoding.UTF8.GetBytes(SaltedText.Text + "\n");
        }

        var put = new EncodedText(text.With(place => place.Sort == PersonalSort.Hash ? Hash : found.IsName(place) ? SaltedText.Name : null)).With(words);

        // Who wrote something that is only read as it was gets it replaced whole rather than broken.
        return string.Equals(put, text.Text, StringComparison.Ordinal) ? content.Bytes
            : content.Kind == ContentKind.Record || PersonalKeys.Find(text.Bytes(put)) is not null ? text.Bytes(put)
            : Encoding.UTF8.GetBytes(SaltedText.Text + "\n");
    }

    // An archive holds the plan and its files once more: it is packed anew where one of them has changed.
    private static List<(KeptContent Content, byte[] Bytes)> Archives(IReadOnlyList<KeptContent> contents, List<(KeptContent Content, byte[] Bytes)> texts)
    {
        var inside = texts.Where(text => text.Content.Kind is ContentKind.Text or ContentKind.File).ToList();
        return contents.Where(content => content.Kind == ContentKind.Archive && inside.Exists(IsChanged)).Select(content => (content, Packed(inside))).ToList();
    }

    private static byte[] Packed(List<(KeptContent Content, byte[] Bytes)> files)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (content, file) in files)
            {
                var named = zip.CreateEntry(content.Name);
                named.LastWriteTime = First;
                using var entry = named.Open();
                entry.Write(file);
            }
        }

        return bytes.ToArray();
    }

    private static byte[] Made(KeptContent content, Found found, List<(string Old, string New)> words)
    {
        var text = Encoding.UTF8.GetString(content.Bytes);

        // Problems quote what could not be read, and that may be anything.
        if (found.Unread.Contains(content.Of))
        {
            if (content.Kind == ContentKind.Document)
            {
                return Encoding.UTF8.GetBytes(SaltedText.Text + "\n");
            }

            text = content.Kind == ContentKind.Report ? WithoutQuotes(content.Bytes) : text;
        }

        var put = new EncodedText(Inputs().Replace(text, row => found.IsInput(row) ? row.Groups["before"].Value + SaltedText.Name + "</td>" : row.Value)).With(words);
        return string.Equals(put, Encoding.UTF8.GetString(content.Bytes), StringComparison.Ordinal) ? content.Bytes : Encoding.UTF8.GetBytes(put);
    }

    private static string WithoutQuotes(byte[] json)
    {
        var (text, done) = (new StringBuilder(json.Length), 0);
        var reader = new Utf8JsonReader(json);
        for (var inProblem = false; reader.Read();)
        {
            if (reader.TokenType == JsonTokenType.PropertyName)
            {
                inProblem = reader.ValueTextEquals("message") || reader.ValueTextEquals("hint");
            }
            else if (inProblem && reader.TokenType == JsonTokenType.String)
            {
                var start = (int)reader.TokenStartIndex;
                text.Append(Encoding.UTF8.GetString(json, done, start - done)).Append('"').Append(SaltedText.Text).Append('"');
                done = (int)reader.BytesConsumed;
                inProblem = false;
            }
            else
            {
                inProblem = false;
            }
        }

        return text.Append(Encoding.UTF8.GetString(json, done, json.Length - done)).ToString();
    }

    // A row of the inputs of a printed report: key and value.
    [GeneratedRegex("(?<before><th scope=\"row\">(?<key>[^<]*)</th><td>)(?<value>[^<]*)</td>", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 10000)]
    private static partial Regex Inputs();

    /// <summary>What a submission says about persons.</summary>
    private sealed class Found
    {
        private readonly HashSet<string> values;
        private readonly HashSet<string> roles;

        private Found(IReadOnlyList<KeptContent> contents)
        {
            Texts = Read(contents);
            var places = Texts.Values.OfType<PersonalText>().SelectMany(text => text.Places).ToList();
            var stated = places.Where(place => place.Sort == PersonalSort.Name).Select(place => place.Value.Trim()).ToHashSet(StringComparer.OrdinalIgnoreCase);
            roles = places.Where(place => place.Sort == PersonalSort.Role).Select(place => place.Value.Trim()).Where(role => !stated.Contains(role)).ToHashSet(StringComparer.OrdinalIgnoreCase);
            var mapped = contents.Where(content => content.Kind == ContentKind.Record && content.Name is "record.yaml").SelectMany(content => PersonalRows.Shared(content.Bytes));
            var reported = contents.Where(content => content.Kind == ContentKind.Report).SelectMany(content => Departures(content.Bytes));
            values = places.Where(IsName).Select(place => place.Value.Trim())
                .Concat(mapped.Concat(reported).Where(value => NameRules.IsName(PersonalSort.Who, value, roles))).ToHashSet(StringComparer.Ordinal);
            Unread = contents.Where(content => content.Kind == ContentKind.Report && HasProblems(content.Bytes)).Select(content => content.Of).ToHashSet();
            Hashes = [.. places.Where(place => place.Sort == PersonalSort.Hash).Select(place => place.Value.Trim()).Distinct(StringComparer.Ordinal)];
        }

        /// <summary>Plans, files and records; null where one cannot be read.</summary>
        public Dictionary<KeptContent, PersonalText?> Texts { get; }

        /// <summary>Names that were found.</summary>
        public IReadOnlyList<string> Names => [.. values.Order(StringComparer.Ordinal)];

        /// <summary>Hashes of other texts that were stated.</summary>
        public IReadOnlyList<string> Hashes { get; }

        /// <summary>Screenings that could not read the plan.</summary>
        public IReadOnlySet<int> Unread { get; }

        public static Found In(IReadOnlyList<KeptContent> contents) => new(contents);

        public bool IsName(PersonalPlace place) => NameRules.IsName(place.Sort, place.Value, roles);

        public bool IsInput(Match row) =>
            PersonalKeys.Names.Contains(row.Groups["key"].Value.Split('.')[^1]) && values.Any(name => NameRules.Forms(name).Contains(EncodedText.Plain(WebUtility.HtmlDecode(row.Groups["value"].Value)), StringComparer.Ordinal));

        private static Dictionary<KeptContent, PersonalText?> Read(IReadOnlyList<KeptContent> contents)
        {
            // Of a plan that no screening could read nobody knows which of its keys mean what they seem to.
            var reports = contents.Where(content => content.Kind == ContentKind.Report).ToList();
            var isUnread = reports.Count > 0 && reports.TrueForAll(report => HasProblems(report.Bytes));
            var texts = contents.Where(content => content.Kind is ContentKind.Text or ContentKind.File).ToDictionary(content => content, content => isUnread ? null : PersonalKeys.Find(content.Bytes));
            foreach (var record in contents.Where(content => content.Kind == ContentKind.Record).GroupBy(content => content.Of))
            {
                var rows = PersonalRows.Find(record.ToDictionary(file => file.Name, file => file.Bytes, StringComparer.Ordinal));
                foreach (var file in record)
                {
                    texts[file] = rows.GetValueOrDefault(file.Name) ?? Unmapped(file.Bytes);
                }
            }

            return texts;
        }

        // Letter by letter where it is no UTF-8, so that all bytes stay but those of a name.
        private static PersonalText Unmapped(byte[] bytes)
        {
            Encoding encoding = System.Text.Unicode.Utf8.IsValid(bytes) ? new UTF8Encoding(false) : Encoding.Latin1;
            return new PersonalText(encoding.GetString(bytes), [], encoding);
        }

        private static IEnumerable<string> Departures(byte[] report)
        {
            using var json = Parsed(report);
            return json is null ? [] : [.. Strings(json.RootElement, "asked_by", "approved_by")];
        }

        private static bool HasProblems(byte[] report)
        {
            using var json = Parsed(report);
            return json is { RootElement.ValueKind: JsonValueKind.Object } && json.RootElement.TryGetProperty("files", out var files) && files.ValueKind == JsonValueKind.Array
                && files.EnumerateArray().Any(file => file.TryGetProperty("problems", out var problems) && problems.GetArrayLength() > 0);
        }

        private static JsonDocument? Parsed(byte[] report)
        {
            try
            {
                return JsonDocument.Parse(report);
            }
            catch (JsonException)
            {
                return null;
            }
        }

        private static IEnumerable<string> Strings(JsonElement element, params string[] keys) => element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().SelectMany(member => keys.Contains(member.Name, StringComparer.Ordinal) && member.Value.ValueKind == JsonValueKind.String ? [member.Value.GetString()!] : Strings(member.Value, keys)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(item => Strings(item, keys)),
            _ => [],
        };
    }
}
