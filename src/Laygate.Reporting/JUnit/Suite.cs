namespace Laygate.Reporting.JUnit;

/// <summary>How a test case ended.</summary>
internal enum CaseResult
{
    /// <summary>It passed.</summary>
    Pass,

    /// <summary>It passed and says something.</summary>
    Remark,

    /// <summary>It counts at the gate.</summary>
    Failure,

    /// <summary>Nothing was decided.</summary>
    Skipped,

    /// <summary>A file could not be read.</summary>
    Error,
}

/// <summary>One test case.</summary>
/// <param name="Class">Rule.</param>
/// <param name="Name">Name, unique in the whole document.</param>
/// <param name="Result">How it ended.</param>
/// <param name="Type">The result in words.</param>
/// <param name="Text">What is said.</param>
internal sealed record Case(string Class, string Name, CaseResult Result, string Type, string Text);

/// <summary>The cases of one plan, or of one file that cannot be read.</summary>
/// <param name="Name">Name.</param>
/// <param name="File">File.</param>
/// <param name="Cases">Cases.</param>
internal sealed record Suite(string Name, string File, IReadOnlyList<Case> Cases)
{
    /// <summary>How many cases ended in a certain way.</summary>
    public int Count(CaseResult result) => Cases.Count(one => one.Result == result);
}
