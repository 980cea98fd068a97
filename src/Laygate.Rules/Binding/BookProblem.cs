namespace Laygate.Rules.Binding;

/// <summary>Where in the definitions a mistake stands, so that whoever read them can name line and column.</summary>
/// <param name="Specification">Name of the specification; null in the general book.</param>
/// <param name="Rule">Family and name of the rule whose own definition is meant, for example <c>layers/course-too-thin</c>; null for the specification's own file or the bibliography.</param>
/// <param name="Path">Steps into the definition, divided by <c>/</c>: keys, and places in lists from 0. Empty: the definition as a whole.</param>
public sealed record BookPlace(string? Specification, string? Rule, string Path)
{
    /// <summary>A place further inside.</summary>
    public BookPlace In(string step) => this with { Path = Path.Length == 0 ? step : $"{Path}/{step}" };

    /// <summary>An entry of a list further inside.</summary>
    public BookPlace In(string list, int index) => In(FormattableString.Invariant($"{list}/{index}"));
}

/// <summary>A mistake in a rule book.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Mistake">What it is, with what its sentence needs.</param>
public sealed record BookProblem(BookPlace Place, BookMistake Mistake);

/// <summary>Collects mistakes.</summary>
internal sealed class BookProblems
{
    private readonly List<BookProblem> found = [];

    public IReadOnlyList<BookProblem> Found => found;

    public int Count => found.Count;

    public void Add(BookPlace place, BookMistake mistake) => found.Add(new BookProblem(place, mistake));
}
