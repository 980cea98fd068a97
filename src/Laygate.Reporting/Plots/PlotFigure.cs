namespace Laygate.Reporting.Plots;

/// <summary>The values of a plot as a table, for those who cannot see it and for those who want the numbers.</summary>
/// <param name="Head">Heads of the columns, with units.</param>
/// <param name="Rows">Rows; the first cell names the row.</param>
public sealed record PlotTable(IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>A plot ready for a page.</summary>
/// <param name="Id">Id in the page.</param>
/// <param name="Family">Family of rules beside whose findings it stands.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Description">What is to be seen in it, in one or two sentences.</param>
/// <param name="Svg">The drawing; holds no text of a plan that is not encoded.</param>
/// <param name="Table">Its values.</param>
public sealed record PlotFigure(string Id, string Family, string Title, string Description, string Svg, PlotTable Table);
