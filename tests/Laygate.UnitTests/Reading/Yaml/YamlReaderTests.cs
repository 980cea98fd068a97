using System.Text;
using Laygate.Reading.Yaml;
using static Laygate.UnitTests.Reading.Yaml.ReadingTestHelper;

namespace Laygate.UnitTests.Reading.Yaml;

public class YamlReaderTests
{
    [Theory]
    // Nothing to read.
    [InlineData("", "1:1-1:1", "There is no plan here: the file is empty.")]
    [InlineData(" \n\n", "1:1-1:1", "There is no plan here: the file is empty.")]
    [InlineData("# only words\n", "1:1-1:1", "There is no plan here: the file holds only comments.")]
    [InlineData("---\n", "1:1-1:4", "There is no plan here: document 1 of the file is empty.")]
    [InlineData("a: 1\n---\n", "2:1-2:4", "There is no plan here: document 2 of the file is empty.")]
    // Not YAML.
    [InlineData("a: b: c\n", "1:5-1:6", "A colon followed by a blank cannot stand inside a value.")]
    [InlineData("a:1\nb: 2\n", "1:1-1:3", "A blank is missing behind the colon of `a`.")]
    [InlineData("a:\n  b: 1\n c: 2\n", "3:2-3:3", "This line does not fit the lines above it.")]
    [InlineData("a: \"x\nb: 2\n", "1:4-1:5", "This text in quotes goes on to a line that is not indented far enough.")]
    [InlineData("a: \"x\n", "1:4-1:5", "The quotation mark that opens here is never closed.")]
    [InlineData("a: [1, 2\nb: 2\n", "2:1-2:2", "A comma or `]` is missing here: the `[` at line 1, column 4 is still open.")]
    [InlineData("a: {b: 1\n", "2:1-2:1", "A comma or `}` is missing here: the `{` at line 1, column 4 is still open.")]
    [InlineData("a: @x\n", "1:4-1:5", "A text cannot begin with `@`.")]
    [InlineData("a: `x\n", "1:4-1:5", "A text cannot begin with a back-tick.")]
    [InlineData("a: %x\n", "1:4-1:5", "A text cannot begin with `%`.")]
    [InlineData("a: \"\\q\"\n", "1:4-1:5", "A backslash in double quotes begins an escape, and this escape does not exist.")]
    // Tabs.
    [InlineData("a:\n\tb: 1\n", "2:1-2:2", "A tab stands in the indentation of this line.")]
    [InlineData("a:\n  b: 1\n  \tc: 2\n", "3:3-3:4", "A tab stands in the indentation of this line.")]
    [InlineData("\ta: b\n", "1:1-1:2", "A tab stands in the indentation of this line.")]
    [InlineData("-\tc: 1\n", "1:2-1:3", "A tab stands in the indentation of this line.")]
    [InlineData("a: 1\nb:\n  c: 2\n  d:\n\t  - e\n", "5:1-5:2", "A tab stands in the indentation of this line.")]
    [InlineData("a: [b, c]#d\n", "1:9-1:10", "A blank is missing before the `#` of a comment.")]
    // Characters that cannot be seen.
    [InlineData("a: x\0y\n", "1:5-1:6", "A NUL character (U+0000) stands here; a text file holds none.")]
    [InlineData("a: x\u0007\u0007y\n", "1:5-1:7", "A control character (U+0007) stands here; it cannot be seen and has no meaning.")]
    [InlineData("a: 1\nb: \u009B31m\n", "2:4-2:5", "A control character (U+009B) stands here; it cannot be seen and has no meaning.")]
    [InlineData("a: x\u0085b\n", "1:5-1:6", "An unusual line end (U+0085) stands here; editors count lines differently around it.")]
    [InlineData("# x\u2028b: 2\n", "1:4-1:5", "An unusual line end (U+2028) stands here; editors count lines differently around it.")]
    [InlineData("a: 1\nb: x\u2029\n", "2:5-2:6", "An unusual line end (U+2029) stands here; editors count lines differently around it.")]
    [InlineData("a: 1\rb: 2\n", "1:5-1:6", "An unusual line end (U+000D) stands here; editors count lines differently around it.")]
    [InlineData("a: \uFEFFx\n", "1:4-1:5", "An invisible character (U+FEFF) stands here.")]
    [InlineData("a: \"\\0\"\n", "1:4-1:8", "This text contains the character U+0000, which cannot be shown.")]
    [InlineData("a: \"\\x1b[31m\"\n", "1:4-1:14", "This text contains the character U+001B, which cannot be shown.")]
    // Constructs that are refused.
    [InlineData("a: 1\nb: 2\na: 3\n", "3:1-3:2", "The key `a` stands here for the second time; the first is at line 1, column 1.")]
    [InlineData("a: 1\n\"a\": 3\n", "2:1-2:4", "The key `a` stands here for the second time; the first is at line 1, column 1.")]
    [InlineData("a: &m {x: 1}\nb:\n  <<: *m\n", "3:3-3:5", "The merge key `<<` is not accepted: it hides which value is meant.")]
    [InlineData("a: !!int 3\n", "1:4-1:11", "A type tag (a word that begins with `!`) is not accepted; types follow from the key.")]
    [InlineData("a: !x [1]\n", "1:4-1:6", "A type tag (a word that begins with `!`) is not accepted; types follow from the key.")]
    [InlineData("? [a, b]\n: c\n", "1:3-1:4", "A key must be a single word or text, not a list or a group of keys.")]
    [InlineData(": x\n", "1:1-1:1", "The key before the colon is missing.")]
    [InlineData("a: &m x\n*m : 1\n", "2:1-2:3", "An alias cannot stand for a key.")]
    // Aliases.
    [InlineData("a: 1\nb: *zz\n", "2:4-2:7", "The alias `*zz` has no anchor `&zz` above it.")]
    [InlineData("a: &m [*m]\n", "1:8-1:10", "The alias `*m` stands inside its own anchor: the content would never end.")]
    [InlineData("a: &m x\n---\nb: *m\n", "3:4-3:6", "The alias `*m` has no anchor `&m` above it.")]
    [InlineData("a: &m 1\nb: &m 2\n", "2:4-2:8", "The anchor `&m` is defined here for the second time; the first is at line 1, column 4.")]
    public void Bad_input_gives_one_clear_problem_at_its_place(string text, string place, string message)
    {
        var problem = Assert.Single(Read(text).Problems);
        Assert.Equal(message, problem.Message);
        Assert.Equal(place, Place(problem.Position));
    }

    [Fact]
    public void A_key_over_1024_characters_gets_its_own_message()
    {
        var problem = Assert.Single(Read($"{new string('k', 1100)}: 1\n").Problems);
        Assert.Equal("A key may have at most 1,024 characters.", problem.Message);
        Assert.Equal("1:1-1:1101", Place(problem.Position));
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_all_named_with_a_guess()
    {
        var result = YamlReader.Read(Encoding.Latin1.GetBytes("temperature: 9 °C\nname: café\n"));
        Assert.Empty(result.Documents);
        Assert.Equal("1:16-1:17 2:10-2:11", string.Join(' ', result.Problems.Select(problem => Place(problem.Position))));
        Assert.Equal("The byte 0xB0 is not UTF-8 text; in the older encoding Windows-1252 it would be `°`.", result.Problems[0].Message);
    }

    [Fact]
    public void Columns_of_invalid_bytes_count_UTF_16_units()
    {
        byte[] bytes = [.. "a: \U0001F600 "u8, 0xFF, .. " b"u8];
        Assert.Equal("1:7-1:8", Place(Assert.Single(YamlReader.Read(bytes).Problems).Position));
    }

    [Fact]
    public void A_truncated_character_at_the_end_is_found() =>
        Assert.Equal("1:4-1:5", Place(Assert.Single(YamlReader.Read([.. "a: "u8, 0xE2, 0x82]).Problems).Position));

    [Fact]
    public void UTF_16_is_named()
    {
        byte[] bytes = [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes("a: 1\n")];
        Assert.Equal("The file is saved as UTF-16.", Assert.Single(YamlReader.Read(bytes).Problems).Message);
    }

    [Fact]
    public void Problems_that_can_be_found_together_are_reported_together_in_file_order()
    {
        var result = Read("a: !t 1\na: 2\nb: *q\nc: x\u0007\nd: [\n");
        Assert.Equal([1, 2, 3, 4, 6], result.Problems.Select(problem => problem.Position.Line));
    }

    [Fact]
    public void A_syntax_error_hides_only_what_follows_it()
    {
        var result = Read("a: 1\na: 2\nb: \"open\nc: 3\nc: 4\n");
        Assert.Equal([2, 3], result.Problems.Select(problem => problem.Position.Line));
    }

    [Fact]
    public void Every_token_knows_its_start_and_end()
    {
        var root = Assert.IsType<MapToken>(Document(Sample).Root);
        Assert.Equal("2:1-15:6", Place(root.Span));
        Assert.Equal("2:7-2:34", Place(root["plan"]!.Span));
        var courses = Assert.IsType<ListToken>(root["courses"]);
        Assert.Equal("4:3-11:18", Place(courses.Span));
        var binder = Assert.IsType<MapToken>(courses.Items[1]);
        Assert.Equal("7:5-11:18", Place(binder.Span));
        Assert.Equal("9:11-11:18", Place(binder["note"]!.Span));
        Assert.Equal("6:11-6:28", Place(((MapToken)courses.Items[0])["note"]!.Span));
        var runs = Assert.IsType<ListToken>(root["runs"]);
        Assert.Equal("12:7-12:57", Place(runs.Span));
        Assert.Equal("12:33-12:56", Place(runs.Items[1].Span));
        Assert.Equal("13:9-15:6", Place(root["folded"]!.Span));
    }

    [Fact]
    public void Scalars_keep_their_raw_text_and_style()
    {
        var root = Assert.IsType<MapToken>(Document(Sample).Root);
        var wearing = Assert.IsType<MapToken>(((ListToken)root["courses"]!).Items[0]);
        Assert.Equal(("quoted 'text'", ScalarStyle.Quoted), Text(wearing["note"]));
        Assert.Equal(("40 mm", ScalarStyle.Plain), Text(wearing["thickness"]));
        Assert.Equal(("one two", ScalarStyle.Block), Text(root["folded"]));
        Assert.Equal(("first line\nsecond line\n", ScalarStyle.Block), Text(((MapToken)((ListToken)root["courses"]!).Items[1])["note"]));
    }

    [Fact]
    public void An_alias_stands_where_it_is_used_and_its_content_where_it_is_written()
    {
        var root = Assert.IsType<MapToken>(Document("a: &m {x: 1,\n  y: 2}\nb: *m\n").Root);
        var used = Assert.IsType<MapToken>(root["b"]);
        Assert.Equal("3:4-3:6", Place(used.Span));
        Assert.Equal("2:6-2:7", Place(used["y"]!.Span));
        Assert.Equal("1:4-2:8", Place(root["a"]!.Span));
    }

    [Fact]
    public void Pairs_without_braces_in_a_list_have_a_place()
    {
        var root = Assert.IsType<MapToken>(Document("c: [p: 1, q: [2]]\n").Root);
        Assert.Equal("1:5-1:9 1:11-1:17", string.Join(' ', ((ListToken)root["c"]!).Items.Select(item => Place(item.Span))));
    }

    [Fact]
    public void BOM_and_CRLF_change_no_position()
    {
        var plain = Document(Sample).Root;
        var dressed = Document($"\uFEFF{Sample.ReplaceLineEndings("\r\n")}").Root;
        Assert.Equal(Spans(plain), Spans(dressed));
    }

    [Fact]
    public void Columns_count_UTF_16_units()
    {
        var root = Assert.IsType<MapToken>(Document("a: {b: \"\U0001F600\", c: 1}\n").Root);
        var inner = Assert.IsType<MapToken>(root["a"]);
        Assert.Equal("1:8-1:12", Place(inner["b"]!.Span));
        Assert.Equal("1:17-1:18", Place(inner["c"]!.Span));
    }

    [Fact]
    public void All_documents_of_a_file_are_returned()
    {
        var result = Read("a: 1\n---\nb: 2\n...\n---\nc: 3\n");
        Assert.Empty(result.Problems);
        Assert.Equal([1, 3, 6], result.Documents.Select(document => document.Root.Span.Line));
        Assert.Equal([1, 2, 3], result.Documents.Select(document => document.Number));
    }

    [Theory]
    [InlineData("- a\n- b\n", "a list", "1:3-1:4")]
    [InlineData("hello\n", "the text `hello`", "1:1-1:6")]
    [InlineData("12\n", "the number `12`", "1:1-1:3")]
    public void A_wrong_top_type_is_named_by_the_helper(string text, string what, string place)
    {
        Assert.Null(Document(text).AsMap("plan", "plan", out var problem));
        Assert.Equal($"A plan is made of keys with values; this document is only {what}.", problem!.Message);
        Assert.Equal(place, Place(problem.Position));
        Assert.NotNull(Document("a: 1\n").AsMap("plan", "plan", out problem));
        Assert.Null(problem);
    }

    private static (string, ScalarStyle) Text(YamlToken? token) => token is ScalarToken scalar ? (scalar.Text, scalar.Style) : default;

    private static List<string> Spans(YamlToken token)
    {
        IEnumerable<YamlToken> children = token switch
        {
            MapToken map => map.Entries.SelectMany(entry => new[] { entry.Key, entry.Value }),
            ListToken list => list.Items,
            _ => [],
        };
        return [Place(token.Span), .. children.SelectMany(Spans)];
    }
}
