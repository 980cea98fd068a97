using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>What a report says of words of the last version.</summary>
public static class OldWordNotes
{
    /// <summary>The note on one of them.</summary>
    public static Note Of(OldWord word) => Note.Of(FindingNotes.OldWord, ("where", word.At), ("old", word.Old), ("new", word.New));
}
