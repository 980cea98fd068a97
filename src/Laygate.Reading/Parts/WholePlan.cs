using Laygate.Reading.Jobs;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Laygate.Reading.Parts;

/// <summary>Writes a plan and the parts that it uses as one file, which checks to the same findings.</summary>
public static class WholePlan
{
    /// <summary>Puts every plan of a file together.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="parts">What the host can reach of the files that plans use.</param>
    /// <param name="shift">Id of the only shift of a job that is wanted; null for all.</param>
    /// <returns>The text with the files that were used, or why there is none. Comments are not carried over.</returns>
    public static (string? Text, IReadOnlyList<string> Uses, IReadOnlyList<Problem> Problems) Of(string file, byte[] bytes, IPartFiles parts, string? shift = null)
    {
        var read = YamlReader.Read(bytes);
        if (!read.IsSound)
        {
            return (null, [], ShownProblems.Of(file, read.Problems));
        }

        var tools = new PartTools();
        if (shift is not null || read.Documents.Any(JobReader.IsJob))
        {
            return OfJob(file, read.Documents, parts, tools, shift);
        }

        var whole = read.Documents.Select(document => document.AsMap("plan", "format", out var problem) is { } map
            ? PlanComposer.Compose(map, file, parts, tools)
            : (Plan: new MapToken([], document.Root.Span), Used: [], Problems: [problem!])).ToList();
        var problems = whole.SelectMany(plan => plan.Problems).ToList();
        return problems.Count > 0
            ? (null, [], ShownProblems.Of(file, problems))
            : (Written([.. whole.Select(plan => plan.Plan)]), [.. whole.SelectMany(plan => plan.Used).Select(used => used.File)], []);
    }

    // The plans of the shifts, put together as for a check; what is wrong in them is for the check to say.
    private static (string? Text, IReadOnlyList<string> Uses, IReadOnlyList<Problem> Problems) OfJob(string file, IReadOnlyList<YamlDocument> documents, IPartFiles parts, PartTools tools, string? shift)
    {
        var wrong = documents is not [var only] || !JobReader.IsJob(only)
            ? [new ReadingProblem("This is no job of several shifts.", documents[0].Root.Span, "Leave `--shift` out.")]
            : SchemaChecker.Check(only, JobSchemas.Load());
        var job = wrong.Count > 0 ? null : JobComposer.Compose((MapToken)documents[0].Root, file, parts, tools);
        var chosen = job?.Shifts.Where(one => shift is null || string.Equals(one.Id, shift, StringComparison.Ordinal)).Select(one => one.Plan).ToList() ?? [];
        if (job is { Problems.Count: 0 } && chosen.Count == 0)
        {
            wrong = [new ReadingProblem($"There is no shift {TokenNames.Quote(shift!)} in the job.", documents[0].Root.Span, $"Its shifts are {string.Join(", ", job.Shifts.Select(one => $"`{one.Id}`"))}.")];
        }

        return wrong.Count > 0 || job!.Problems.Count > 0 ? (null, [], ShownProblems.Of(file, [.. wrong, .. job?.Problems ?? []])) : (Written(chosen), [.. job.Used.Select(used => used.File)], []);
    }

    /// <summary>The files that the plans of a file use, and those that these use in turn, as they are shown; none where it cannot be read.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="parts">What the host can reach of the files that plans use.</param>
    public static IReadOnlyList<string> FilesOf(string file, byte[] bytes, IPartFiles parts)
    {
        // Most plans use none, and need not be read for that.
        if ((bytes.AsSpan().IndexOf("uses"u8) < 0 && parts.Common(file).Count == 0) || YamlReader.Read(bytes) is not { IsSound: true } read)
        {
            return [];
        }

        var tools = new PartTools();
        return [.. read.Documents.SelectMany(document => UsedBy(document, file, parts, tools)).Select(used => used.File).Distinct(StringComparer.Ordinal)];
    }

    // What only one shift of a job names counts as well.
    private static IReadOnlyList<UsedFile> UsedBy(YamlDocument document, string file, IPartFiles parts, PartTools tools) => document.Root is not MapToken map ? []
        : JobReader.IsJob(document) && SchemaChecker.Check(document, JobSchemas.Load()).Count == 0 ? JobComposer.Compose(map, file, parts, tools).Used
        : PlanComposer.Compose(map, file, parts, tools).Used;

    private static string Written(IReadOnlyList<MapToken> plans)
    {
        using var text = new StringWriter { NewLine = "\n" };
        var emitter = new Emitter(text, new EmitterSettings(bestIndent: 2, bestWidth: int.MaxValue, isCanonical: false, maxSimpleKeyLength: 1024, newLine: "\n"));
        emitter.Emit(new StreamStart());
        foreach (var plan in plans)
        {
            emitter.Emit(new DocumentStart(null, null, isImplicit: plans.Count == 1));
            Emit(emitter, plan);
            emitter.Emit(new DocumentEnd(isImplicit: true));
        }

        emitter.Emit(new StreamEnd());
        return text.ToString();
    }

    private static void Emit(Emitter emitter, YamlToken token)
    {
        switch (token)
        {
            case ScalarToken scalar:
                var isPlain = scalar.Style == Yaml.ScalarStyle.Plain;
                var style = isPlain ? YamlDotNet.Core.ScalarStyle.Plain : scalar.Style == Yaml.ScalarStyle.Block ? YamlDotNet.Core.ScalarStyle.Literal : YamlDotNet.Core.ScalarStyle.DoubleQuoted;
                emitter.Emit(new Scalar(AnchorName.Empty, TagName.Empty, scalar.Text, style, isPlainImplicit: isPlain, isQuotedImplicit: true));
                break;
            case MapToken map:
                emitter.Emit(new MappingStart(AnchorName.Empty, TagName.Empty, isImplicit: true, MappingStyle.Block));
                foreach (var (key, value) in map.Entries)
                {
                    Emit(emitter, key);
                    Emit(emitter, value);
                }

                emitter.Emit(new MappingEnd());
                break;
            case ListToken list:
                emitter.Emit(new SequenceStart(AnchorName.Empty, TagName.Empty, isImplicit: true, list.Items.Count == 0 ? SequenceStyle.Flow : SequenceStyle.Block));
                foreach (var item in list.Items)
                {
                    Emit(emitter, item);
                }

                emitter.Emit(new SequenceEnd());
                break;
        }
    }
}
