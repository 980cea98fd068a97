using Laygate.Reporting.Language;

namespace Laygate.Reporting.Terminal;

/// <summary>Which style a part of the report has.</summary>
internal static class Styles
{
    /// <summary>The style of a part.</summary>
    public static TextStyle Of(FindingGroup group) => group switch
    {
        FindingGroup.Failed => TextStyle.Fail,
        FindingGroup.Warned => TextStyle.Warn,
        FindingGroup.Passed => TextStyle.Pass,
        FindingGroup.NotApplicable => TextStyle.Quiet,
        _ => TextStyle.Undecided,
    };
}
