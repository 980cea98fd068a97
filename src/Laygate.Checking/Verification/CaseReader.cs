using Laygate.Engineering.Quantities;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>Reads case files.</summary>
internal static class CaseReader
{
    /// <summary>Reads all cases of a file.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="schema">Schema of cases.</param>
    /// <param name="problems">Receives what is wrong; the cases are not to be relied on when there is anything.</param>
    public static IReadOnlyList<CaseDefinition> Read(ReadOnlySpan<byte> bytes, LoadedSchema schema, List<ReadingProblem> problems)
    {
        var reading = YamlReader.Read(bytes, schema.DocumentName);
        problems.AddRange(reading.Problems);
        var documents = reading.Documents.Select(document => document with { Root = OldWords.OfCases.Renew(document.Root).Root }).ToList();
        if (reading.IsSound)
        {
            problems.AddRange(documents.SelectMany(document => SchemaChecker.Check(document, schema)));
        }

        if (problems.Count > 0)
        {
            return [];
        }

        return [.. documents.Select(document => Map(new CaseFields((MapToken)document.Root, problems)))];
    }

    private static CaseDefinition Map(CaseFields fields)
    {
        var (conduction, formula) = (fields.Group("conduction"), fields.Group("formula"));
        if ((conduction is null) == (formula is null))
        {
            fields.Problems.Add(new ReadingProblem("A case needs either `conduction` or `formula`.", fields.Span, "Keep exactly one of the two."));
        }

        var source = fields.Group("source")!;
        var question = conduction is null ? null : ConductionMapper.Map(conduction);
        var expected = question is null
            ? formula is null ? [] : FormulaMapper.Map(formula)
            : [.. conduction!.Groups("expected").SelectMany(group => new ExpectationMapper(group, question).Map())];
        return new CaseDefinition(
            fields.Text("topic")!,
            fields.Text("title")!,
            new VerificationSource(source.Text("document")!, source.Text("edition"), source.Text("place")),
            KnownBy(fields.Text("evidence")!),
            fields.Text("remark"),
            question,
            expected);
    }

    private static Evidence KnownBy(string word) => word switch
    {
        "read" => Evidence.Read,
        "second-hand" => Evidence.SecondHand,
        "derived" => Evidence.Derived,
        "judgement" => Evidence.Judgement,
        "common-practice" => Evidence.CommonPractice,
        "confirmed" => Evidence.Confirmed,
        _ => Evidence.Recalled,
    };
}
