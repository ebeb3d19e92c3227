using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>One plot of a stack that shares the scale along its foot.</summary>
internal sealed class PlotPanel
{
    private readonly FigureSize _size;
    private readonly UnitSystem _units;
    private readonly Dimension _dimension;
    private readonly double _step;

    /// <param name="from">Lowest value that must be seen, SI.</param>
    /// <param name="to">Highest.</param>
    public PlotPanel(FigureSize size, UnitSystem units, Dimension dimension, Scale along, double top, double bottom, double from, double to)
    {
        (_size, _units, _dimension, Along, Top, Bottom) = (size, units, dimension, along, top, bottom);
        var unit = Unit.Default(dimension, units);
        var (low, high) = (unit.FromSi(from), unit.FromSi(to));
        if (!(high > low)) (low, high) = (low - 1, high + 1);
        _step = Scale.Step(high - low, (int)Math.Clamp((bottom - top) / (2.4 * size.Text), 1, 6));
        Value = new Scale(unit.ToSi(low), unit.ToSi(high), bottom, top);
    }

    /// <summary>Places from left to right.</summary>
    public Scale Along { get; }

    public Scale Value { get; }

    public double Top { get; }

    public double Bottom { get; }

    public double Left => Along.PlaceFrom;

    public double Right => Along.PlaceTo;

    public Place At(double along, double value) => new(Along.At(along), Value.At(value));

    /// <summary>Hairlines with their values at the left, the plot's name over it.</summary>
    public void Draw(Pen pen, string name)
    {
        var t = _size.Text;
        pen.Text(Left, Top - 0.7 * t, Lettering.Fit(name, t, _size.Width - Left), t, Role.Quiet);
        var unit = Unit.Default(_dimension, _units);
        foreach (var value in Scale.Ticks(unit.FromSi(Value.From), unit.FromSi(Value.To), _step))
        {
            var y = Value.At(unit.ToSi(value));
            pen.Line(Left, y, Right, y, new Stroke(Role.Hairline, _size.Thick(1)));
            pen.Text(Left - 0.5 * t, y + 0.35 * t, Print.Bare(unit.ToSi(value), _dimension, _units, Decimals(_step)), t, Role.Quiet, Anchor.End);
        }
    }

    /// <summary>Round values along the foot, with what they are at their left.</summary>
    public static void Foot(Pen pen, FigureSize size, Scale along, double bottom, Dimension dimension, UnitSystem units, string name)
    {
        var t = size.Text;
        var unit = Unit.Default(dimension, units);
        pen.Line(along.PlaceFrom, bottom, along.PlaceTo, bottom, new Stroke(Role.Ink, size.Thick(1.2)));
        var widest = Lettering.Width("0000", t) + 1.6 * t;
        var (from, to) = (unit.FromSi(along.From), unit.FromSi(along.To));
        var step = Scale.Step(to - from, (int)Math.Clamp((along.PlaceTo - along.PlaceFrom) / widest, 1, 10));
        foreach (var value in Scale.Ticks(from, to, step))
        {
            var x = along.At(unit.ToSi(value));
            pen.Line(x, bottom, x, bottom + 0.4 * t, new Stroke(Role.Quiet, size.Thick(1)));
            pen.Text(x, bottom + 1.6 * t, Print.Bare(unit.ToSi(value), dimension, units, dimension == Dimension.Lift && units == UnitSystem.UsCustomary ? null : Decimals(step)), t, Role.Quiet, Anchor.Middle);
        }

        pen.Text((along.PlaceFrom + along.PlaceTo) / 2, bottom + 3 * t, Lettering.Fit(name, t, size.Width), t, Role.Quiet, Anchor.Middle);
    }

    internal static int Decimals(double step) => Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 4);
}
