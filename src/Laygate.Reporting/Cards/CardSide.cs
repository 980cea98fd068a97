using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>A part of a card.</summary>
/// <param name="Title">Its heading.</param>
public abstract record CardBlock(string Title);

/// <summary>Lines one below the other.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Items">Lines.</param>
public sealed record CardList(string Title, IReadOnlyList<string> Items) : CardBlock(Title);

/// <summary>A table.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Head">Heads of the columns.</param>
/// <param name="Rows">Rows; cells as many as heads.</param>
public sealed record CardTable(string Title, IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows) : CardBlock(Title);

/// <summary>Strips of a roller, drawn across the mat.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Strips">Strips.</param>
/// <param name="Remark">What to know about them.</param>
public sealed record CardStrips(string Title, IReadOnlyList<SheetStrip> Strips, string Remark) : CardBlock(Title);

/// <summary>One side of A5.</summary>
/// <param name="Role">Whose card it is.</param>
/// <param name="Number">Side of this card, from 1.</param>
/// <param name="Sides">Sides that this card has.</param>
/// <param name="Blocks">Its parts.</param>
public sealed record CardSide(string Role, int Number, int Sides, IReadOnlyList<CardBlock> Blocks);
