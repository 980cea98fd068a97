using System.Globalization;
using Laygate.Reporting.Text;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace Laygate.Reporting.Plots;

/// <summary>An empty drawing with axes, and the marks that all plots share.</summary>
internal sealed class Canvas
{
    public const double Width = 660;
    private const double TextSize = 13;

    private readonly LinearAxis across;
    private readonly LinearAxis up;

    /// <summary>Makes a drawing.</summary>
    /// <param name="across">Name and unit of the axis across.</param>
    /// <param name="up">Name and unit of the axis upwards; null for lanes without a scale.</param>
    /// <param name="height">Height of the drawing.</param>
    public Canvas(string across, string? up, double height)
    {
        Height = height;
        this.across = Axis(AxisPosition.Bottom, across);
        this.up = Axis(AxisPosition.Left, up ?? string.Empty);
        this.up.IsAxisVisible = up is not null;
        var side = up is null ? 28 : 4;
        Model = new PlotModel { PlotAreaBorderThickness = new OxyThickness(0), Padding = new OxyThickness(side, 8, 28, 4), TextColor = Ink.Dark, DefaultFontSize = TextSize, Culture = CultureInfo.InvariantCulture };
        Model.Axes.Add(this.across);
        Model.Axes.Add(this.up);
    }

    public PlotModel Model { get; }

    public double Height { get; }

    /// <summary>Whether words get a rim of paper, which keeps them readable where they cross a line.</summary>
    public bool Rim { get; init; } = true;

    /// <summary>Sets the ends of the axes.</summary>
    public Canvas Span(double left, double right, double bottom, double top)
    {
        (across.Minimum, across.Maximum, up.Minimum, up.Maximum) = (left, right, bottom, top);
        return this;
    }

    /// <summary>Labels the axis across by other words than its numbers.</summary>
    public void LabelAcross(Func<double, string> label, double step) => (across.LabelFormatter, across.MajorStep) = (label, step);

    /// <summary>Adds a line.</summary>
    public void Line(IEnumerable<(double X, double Y)> points, OxyColor colour, LineStyle style, double thickness)
    {
        var line = new LineSeries { Color = colour, LineStyle = style, StrokeThickness = thickness };
        line.Points.AddRange(points.Select(point => new DataPoint(point.X, point.Y)));
        Model.Series.Add(line);
    }

    /// <summary>Adds a band between two lines.</summary>
    public void Band(IReadOnlyList<(double X, double Low, double High)> points, OxyColor fill)
    {
        var area = new AreaSeries { Fill = fill, Color = Ink.Mid, Color2 = Ink.Mid, StrokeThickness = 0.7 };
        area.Points.AddRange(points.Select(point => new DataPoint(point.X, point.High)));
        area.Points2.AddRange(points.Select(point => new DataPoint(point.X, point.Low)));
        Model.Series.Add(area);
    }

    /// <summary>Adds a rectangle.</summary>
    public void Box(double left, double right, double bottom, double top, OxyColor fill, OxyColor? edge = null, string? text = null, AnnotationLayer layer = AnnotationLayer.BelowSeries) =>
        Model.Annotations.Add(new RectangleAnnotation
        {
            MinimumX = left,
            MaximumX = right,
            MinimumY = bottom,
            MaximumY = top,
            Fill = fill,
            Stroke = edge ?? OxyColors.Transparent,
            StrokeThickness = edge is null ? 0 : 1,
            Text = text is null ? null : PlainText.Show(text),
            TextColor = Ink.Dark,
            FontSize = TextSize,
            Layer = layer,
        });

    /// <summary>Adds text at a place.</summary>
    public void Say(double x, double y, string text, HorizontalAlignment side = HorizontalAlignment.Left, VerticalAlignment height = VerticalAlignment.Middle, double size = TextSize, bool strong = false) =>
        Model.Annotations.Add(new TextAnnotation
        {
            TextPosition = new DataPoint(x, y),
            Text = PlainText.Show(text),
            TextHorizontalAlignment = side,
            TextVerticalAlignment = height,
            TextColor = Ink.Dark,
            Stroke = OxyColors.Transparent,
            StrokeThickness = 0,
            FontSize = size,
            FontWeight = strong ? FontWeights.Bold : FontWeights.Normal,
            Layer = AnnotationLayer.AboveSeries,
            Padding = new OxyThickness(2),
        });

    /// <summary>Adds a level line with its name above it at the right.</summary>
    public void Level(double y, string text, LineStyle style = LineStyle.Dash)
    {
        Model.Annotations.Add(new LineAnnotation { Type = LineAnnotationType.Horizontal, Y = y, Color = Ink.Dark, LineStyle = style, StrokeThickness = 1.3, Layer = AnnotationLayer.AboveSeries });
        Say(across.Maximum, y + (0.045 * (up.Maximum - up.Minimum)), text, HorizontalAlignment.Right, size: TextSize - 1);
    }

    /// <summary>Adds a mark.</summary>
    public void Mark(double x, double y, MarkerType shape, double size = 5) => Model.Annotations.Add(new PointAnnotation
    {
        X = x,
        Y = y,
        Shape = shape,
        Size = size,
        Fill = Ink.Dark,
        Stroke = OxyColors.White,
        StrokeThickness = 1.2,
        Layer = AnnotationLayer.AboveSeries,
    });

    private static LinearAxis Axis(AxisPosition position, string title) => new()
    {
        Position = position,
        Title = title,
        TitleFontSize = TextSize,
        FontSize = TextSize,
        TextColor = Ink.Dark,
        TitleColor = Ink.Dark,
        AxislineStyle = LineStyle.Solid,
        AxislineColor = Ink.Dark,
        TicklineColor = Ink.Dark,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = Ink.Faint,
        MinorTickSize = 0,
        MajorTickSize = 4,
        IsPanEnabled = false,
        IsZoomEnabled = false,
        AxisTitleDistance = position == AxisPosition.Left ? 16 : 6,
    };
}
