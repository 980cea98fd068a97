using System.CommandLine;
using Laygate.Cli.Arguments;
using Laygate.Reading;
using Laygate.Reading.Schema;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>schema</c>: the schemas that the program reads and writes by.</summary>
internal sealed class SchemaCommand : Verb
{
    private const string Words = """
        Prints a schema: the shape of a file that is read or written, for editors and programs.

        Usage
          laygate schema [NAME]

        Without a name, the names are listed.

        Example
          laygate schema plan > plan.schema.json

        """;

    private readonly Argument<string[]> name = new("NAME") { Arity = ArgumentArity.ZeroOrMore };

    public SchemaCommand()
        : base("schema", Words) => Add(name);

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var text = parsed.GetValue(name) switch
        {
            null or [] => string.Concat(EmbeddedSchemas.Names.Select(one => $"{one}\n")),
            [var one] => EmbeddedSchemas.Find(one) ?? throw Unknown(one),
            _ => throw new ArgumentProblem("Name one schema. Write for example: laygate schema plan"),
        };
        return new Request.Do(host =>
        {
            host.Streams.Text(text);
            return ExitCodes.Clean;
        });
    }

    private static ArgumentProblem Unknown(string name)
    {
        var near = NearestNames.Of(name, EmbeddedSchemas.Names) is [var meant, ..] ? $"Did you mean {meant}?" : "`laygate schema` lists them.";
        return new ArgumentProblem($"There is no schema `{name}`. {near}");
    }
}
