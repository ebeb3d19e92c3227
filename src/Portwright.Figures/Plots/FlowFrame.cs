using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>The axes of flow over lift: where everything lies, the hairlines, the lifts along the foot.</summary>
internal sealed class FlowFrame
{
    private readonly FlowPlot _plot;
    private readonly UnitSystem _units;
    private readonly IReadOnlyList<(double Flow, string Words)> _levels;

    public FlowFrame(FlowPlot plot, FigureSize size, UnitSystem units)
    {
        (_plot, _units, Size) = (plot, units, size);
        var t = size.Text;
        var flow = Unit.Default(Dimension.VolumeFlow, units);
        var top = plot.Drawn().SelectMany(l => l.Dots.Select(d => d.Flow + d.Doubt).Concat(l.Line.Select(p => p.Flow))).DefaultIfEmpty(0).Max();
        HasNumbers = top > 0;
        top = Math.Max(top, WantedBand.Top(plot, top));
        var bottomRows = plot.Last is null ? 3.2 * t : 5.2 * t + StripHeight(size) + 1.8 * t;
        Top = 3.6 * t;
        Bottom = size.Height - bottomRows;

        var highest = HasNumbers ? flow.FromSi(top) * 1.1 : 100;
        var step = Scale.Step(highest, (int)Math.Clamp((Bottom - Top) / (2.6 * t), 2, 6));
        _levels = [.. Scale.Ticks(step, highest, step).Select(v => (flow.ToSi(v), Print.Bare(flow.ToSi(v), Dimension.VolumeFlow, units, step < 1 ? 1 : 0)))];

        var names = plot.Drawn().Select(l => Lettering.Width(l.Name, t, Weight.SemiBold)).DefaultIfEmpty(0).Max();
        Left = Math.Max(_levels.Select(l => Lettering.Width(l.Words, t)).DefaultIfEmpty(0).Max(), Lettering.Width(AxisName, t)) + 0.7 * t;
        var lifts = plot.Planned.Concat(plot.Drawn().SelectMany(l => l.Dots.Select(d => d.Lift)));
        if (plot.CamLift is { } cam) lifts = lifts.Append(cam);
        HighestLift = lifts.DefaultIfEmpty(0).Max();
        if (!(HighestLift > 0)) HighestLift = 0.6 * 0.0254;
        var halfLift = Lettering.Width(Print.Number(HighestLift, Dimension.Lift, units), t) / 2;
        Right = size.Width - Math.Max(halfLift, Math.Min(names, size.Width * 0.22) + 0.9 * t);
        Lift = new Scale(0, HighestLift, Left, Right);
        HighestFlow = flow.ToSi(Math.Max(highest, step));
        Flow = new Scale(0, HighestFlow, Bottom, Top);
    }

    public FigureSize Size { get; }

    public Scale Lift { get; }

    public Scale Flow { get; }

    public double Left { get; }

    public double Right { get; }

    public double Top { get; }

    /// <summary>The lift axis.</summary>
    public double Bottom { get; }

    public double HighestLift { get; }

    /// <summary>m3/s, at the top of the frame.</summary>
    public double HighestFlow { get; }

    public bool HasNumbers { get; }

    /// <summary>Baseline of the lifts written under the axis.</summary>
    public double LiftRow => Bottom + 2.2 * Size.Text;

    /// <summary>Baseline of the strip's heading.</summary>
    public double StripHeading => LiftRow + 2.3 * Size.Text;

    public double StripTop => StripHeading + 0.7 * Size.Text;

    public double StripBottom => StripTop + StripHeight(Size);

    public Place At(double lift, double flow) => new(Lift.At(lift), Flow.At(flow));

    private string AxisName => $"lift, {(_units == UnitSystem.UsCustomary ? "in" : Print.UnitName(Dimension.Lift, _units))}";

    private static double StripHeight(FigureSize size) => Math.Max(4.2 * size.Text, size.Height * 0.13);

    /// <summary>Draws hairlines, axis and lifts.</summary>
    public void Draw(Pen pen)
    {
        var t = Size.Text;
        var unit = Print.UnitName(Dimension.VolumeFlow, _units);
        var over = Lettering.Fit(HasNumbers || _plot.Basis.Length > 0 ? $"{unit}, {_plot.Basis}".TrimEnd(' ', ',') : unit, t, Size.Width - Left);
        pen.Text(Left, 1.1 * t, over, t, Role.Quiet);
        foreach (var (flow, words) in _levels)
        {
            var y = Flow.At(flow);
            pen.Line(Left, y, Right, y, new Stroke(Role.Hairline, Size.Thick(1)));
            if (HasNumbers) pen.Text(Left - 0.6 * t, y + 0.35 * t, words, t, Role.Quiet, Anchor.End);
        }

        pen.Line(Left, Bottom, Right, Bottom, new Stroke(Role.Ink, Size.Thick(1.2)));
        DrawLifts(pen);
    }

    private void DrawLifts(Pen pen)
    {
        var t = Size.Text;
        var read = _plot.Now?.Dots.Select(d => d.Lift).ToList() ?? [];
        foreach (var lift in _plot.Planned.Where(p => !read.Any(r => Math.Abs(r - p) < 1e-6)))
            pen.Line(Lift.At(lift), Bottom, Lift.At(lift), Bottom + 0.9 * t, new Stroke(Role.Quiet, Size.Thick(1.2)));
        foreach (var lift in read)
            pen.Line(Lift.At(lift), Bottom, Lift.At(lift), Bottom + 0.9 * t, new Stroke(Role.Ink, Size.Thick(2.8)));

        pen.Text(Left - 0.6 * t, LiftRow, AxisName, t, Role.Quiet, Anchor.End);
        var unit = Unit.Default(Dimension.Lift, _units);
        var widest = Lettering.Width(Print.Number(HighestLift, Dimension.Lift, _units), t) + 1.2 * t;
        var span = unit.FromSi(HighestLift);
        var step = Scale.Step(span, (int)Math.Clamp((Right - Left) / widest, 1, 12));
        foreach (var value in Scale.Ticks(step, span, step))
        {
            var lift = unit.ToSi(value);
            if (!_plot.Planned.Concat(read).Any(l => Math.Abs(l - lift) < 1e-6))
                pen.Line(Lift.At(lift), Bottom, Lift.At(lift), Bottom + 0.5 * t, new Stroke(Role.Quiet, Size.Thick(1)));
            var words = _units == UnitSystem.UsCustomary ? Print.Bare(lift, Dimension.Lift, _units) : Print.Bare(lift, Dimension.Lift, _units, step < 1 ? 1 : 0);
            pen.Text(Lift.At(lift), LiftRow, words, t, read.Any(r => Math.Abs(r - lift) < 1e-6) ? Role.Ink : Role.Quiet, Anchor.Middle);
        }
    }

    /// <summary>Writes the cam's lift over the plot.</summary>
    public void NameCam(Pen pen)
    {
        if (_plot.CamLift is not { } cam) return;
        var (t, x) = (Size.Text, Lift.At(cam));
        var words = $"cam {Print.Number(cam, Dimension.Lift, _units)}";
        var fits = x + 0.5 * t + Lettering.Width(words, t) <= Size.Width;
        pen.Text(fits ? x + 0.5 * t : x - 0.5 * t, Top - 0.5 * t, words, t, Role.Brass, fits ? Anchor.Start : Anchor.End);
    }

    /// <summary>Draws the cam's lift, left out where a text stands, so that it never runs through a number.</summary>
    public void DrawCam(Pen pen, LabelPlaces labels)
    {
        if (_plot.CamLift is not { } cam) return;
        var x = Lift.At(cam);
        var stroke = new Stroke(Role.Brass, Size.Thick(1.6), LineType.LongDashDot);
        foreach (var (from, to) in labels.Free(x, Top - 1.3 * Size.Text, Bottom)) pen.Line(x, from, x, to, stroke);
        if (!_plot.Less.IsDefaultOrEmpty) pen.Line(x, StripTop, x, StripBottom, stroke);
    }
}
