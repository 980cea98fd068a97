using Laygate.Cli.Files;
using Laygate.Rules.Results;
using Laygate.Validation;
using Laygate.Validation.RuleFiles;

namespace Laygate.Cli.Checking;

/// <summary>The only place that knows the entry points of Validation.</summary>
internal sealed class ValidationPipeline : ICheckPipeline
{
    /// <inheritdoc/>
    public CheckSession Open(CheckRequest request)
    {
        var path = Path.Combine(AppContext.BaseDirectory, RulePack.FileName);
        if (!File.Exists(path))
        {
            return new CheckSession(null, [new Problem(path, "The rule pack that belongs beside the program is missing.", "Install the program again.", null)]);
        }

        var bound = RuleBooks.Load(RulePack.Read(File.ReadAllBytes(path)), request.Rules, new RuleFilesOnDisk());
        if (bound.Book is null)
        {
            return new CheckSession(null, bound.Problems);
        }

        var settings = new CheckSettings(
            request.AtLeastStage, request.Date, request.ProgramVersion, Remedies: request.Remedies, Outlook: request.Outlook);
        var check = new PlanCheck(bound.Book, settings);
        return new CheckSession(check.Run, [], check.Sheet);
    }
}
