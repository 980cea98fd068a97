using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>A part of a card.</summary>
/// <param name="Title">Its heading.</param>
public abstract record CardBlock(string Title);

/// <summary>One line of a list.</summary>
/// <param name="Lead">Words that are found at a glance; empty where there are none.</param>
/// <param name="Text">The line.</param>
public sealed record CardLine(string Lead, string Text)
{
    /// <summary>A line without leading words.</summary>
    public static implicit operator CardLine(string text) => new(string.Empty, text);

    /// <summary>The whole line.</summary>
    public string Whole => Lead.Length == 0 ? Text : $"{Lead}: {Text}";
}

/// <summary>Lines one below the other.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Items">Lines.</param>
public sealed record CardList(string Title, IReadOnlyList<CardLine> Items) : CardBlock(Title)
{
    /// <summary>Whether it is read while a machine runs, and is printed large.</summary>
    public bool IsLarge { get; init; }
}

/// <summary>A table.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Head">Heads of the columns.</param>
/// <param name="Rows">Rows; cells as many as heads.</param>
public sealed record CardTable(string Title, IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows) : CardBlock(Title);

/// <summary>A long table of short cells, two columns of rows a side, read down the first and then the second.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Head">Heads of the columns.</param>
/// <param name="Rows">Rows; cells as many as heads.</param>
public sealed record CardRun(string Title, IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows) : CardBlock(Title)
{
    /// <summary>Whether it is a list of loads, which takes as many sides as it needs.</summary>
    public bool IsLoads { get; init; }

    /// <summary>Rows of the first column: the first half.</summary>
    public int Half => (Rows.Count + 1) / 2;
}

/// <summary>Strips of a roller, drawn across the mat.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Strips">Strips.</param>
/// <param name="Remark">What to know about them.</param>
public sealed record CardStrips(string Title, IReadOnlyList<SheetStrip> Strips, string Remark) : CardBlock(Title);

/// <summary>All that one role needs.</summary>
/// <param name="Role">Whose card it is.</param>
/// <param name="Blocks">Its parts.</param>
public sealed record Card(string Role, IReadOnlyList<CardBlock> Blocks);

/// <summary>One side of A5.</summary>
/// <param name="Role">Whose card it is.</param>
/// <param name="Number">Side of this card, from 1.</param>
/// <param name="Sides">Sides that this card has.</param>
/// <param name="Blocks">Its parts.</param>
public sealed record CardSide(string Role, int Number, int Sides, IReadOnlyList<CardBlock> Blocks)
{
    /// <summary>Whether it is set a tenth smaller, because the card would not fit on two sides otherwise.</summary>
    public bool IsDense { get; init; }
}
