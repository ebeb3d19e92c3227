using System.Collections.Immutable;
using Portwright.Engine.Runs;
using Portwright.Physics.Crank;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>
/// Intake pipe, cylinder and exhaust pipe at one crank angle: each pipe by its own sections, coloured by pressure over the outside air's, valves and piston where
/// they stand. Lengths are to each pipe's own scale, widths drawn larger. Whatever moves is named, so that a page can move it.
/// </summary>
public sealed class PipesFigure
{
    /// <summary>Names of what moves.</summary>
    public const string IntakeGas = "intake-gas", ExhaustGas = "exhaust-gas", CylinderGas = "cylinder-gas", Piston = "piston", IntakeValve = "intake-valve", ExhaustValve = "exhaust-valve";

    private readonly CycleTrace _trace;
    private readonly SliderCrank _crank;
    private readonly UnitSystem _units;
    private readonly FigureSize _size;
    private readonly double _outside, _low, _high, _middle, _widths, _deck, _stroke, _lift;

    /// <param name="outside">Pressure of the air the engine stands in, Pa.</param>
    public PipesFigure(CycleTrace trace, SliderCrank crank, double outside, UnitSystem units, FigureSize size)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(crank);
        ArgumentNullException.ThrowIfNull(size);
        (_trace, _crank, _outside, _units, _size) = (trace, crank, outside, units, size);
        var all = trace.Intake.AllFrames.Concat(trace.Exhaust.AllFrames).SelectMany(f => f.Pressure).Select(p => p - outside).Order().ToList();
        // The sharpest blow-down would leave all else in one colour.
        (_low, _high) = (all[(int)(0.01 * all.Count)], all[(int)(0.98 * all.Count)]);
        var t = size.Text;
        var thickest = Math.Sqrt(trace.Intake.Sections.Concat(trace.Exhaust.Sections).Max());
        var tall = 0.24 * size.Height;
        _widths = tall / thickest;
        _middle = 1.8 * t + tall / 2;
        _deck = _middle + tall / 2 + 0.3 * t;
        _stroke = size.Height - 3.6 * t - _deck - 1.6 * t;
        _lift = 0.8 * t;
    }

    private double Bore => 0.22 * _size.Width;

    private double Left => 0.44 * _size.Width - Bore / 2;

    /// <summary>Frames of a cycle.</summary>
    public int Frames => _trace.Intake.AllFrames.Count;

    /// <summary>Degrees after the firing top of a frame.</summary>
    public int Shown(int frame) => frame * _trace.Intake.FrameEvery;

    /// <summary>Colours of the cells of a pipe from the valve outwards, a letter a cell: <c>a</c> the lowest step of <see cref="SpeedColours"/>.</summary>
    public string Colours(int frame, bool intake) => string.Concat(Of(frame, intake).Pressure.Select(p => Letter(p - _outside)));

    /// <summary>Colour of the gas in the cylinder, a letter.</summary>
    public char CylinderColour(int frame) => Letter(_trace.CylinderPressure[Row(frame)] - _outside);

    /// <summary>How far the piston lies under its top, and each valve off its seat, in the drawing's unit.</summary>
    public (double Piston, double Intake, double Exhaust) Moves(int frame)
    {
        var row = Row(frame);
        var most = Math.Max(_trace.IntakeLift.Max(), _trace.ExhaustLift.Max());
        return (_crank.FromTop(row * Math.PI / 180) / _crank.Travel * _stroke, _trace.IntakeLift[row] / most * _lift, _trace.ExhaustLift[row] / most * _lift);
    }

    public Drawing Draw(int frame)
    {
        var t = _size.Text;
        var pen = new Pen();
        Pipe(pen, frame, true);
        Pipe(pen, frame, false);
        Cylinder(pen, frame);
        ColourScale(pen);
        pen.Text(2, 1.1 * t, $"intake, {Print.Number(_trace.Intake.Distances[^1], Dimension.Length, _units, _units == UnitSystem.UsCustomary ? 1 : 0)}", t, Role.Quiet);
        pen.Text(_size.Width - 2, 1.1 * t, $"exhaust, {Print.Number(_trace.Exhaust.Distances[^1], Dimension.Length, _units, _units == UnitSystem.UsCustomary ? 1 : 0)}", t, Role.Quiet, Anchor.End);
        return pen.Done(_size.Width, _size.Height, "Pressure along the pipes", $"Calculated; {CycleAngle.Words(Shown(frame))}. Widths are drawn larger than lengths.");
    }

    private int Row(int frame) => CycleAngle.Row(Shown(frame));

    private PipeFrame Of(int frame, bool intake) => (intake ? _trace.Intake : _trace.Exhaust).AllFrames[Row(frame) / _trace.Intake.FrameEvery];

    private char Letter(double over) => (char)('a' + Math.Clamp((int)((over - _low) / (_high - _low) * SpeedColours.Steps), 0, SpeedColours.Steps - 1));

    private static string Colour(char letter) => SpeedColours.Step(letter - 'a');

    private void Pipe(Pen pen, int frame, bool intake)
    {
        var pipe = intake ? _trace.Intake : _trace.Exhaust;
        var seat = intake ? Left + 0.46 * Bore : Left + 0.54 * Bore;
        var end = intake ? 2.0 : _size.Width - 2;
        var count = pipe.Sections.Count;
        double X(int edge) => seat + (end - seat) * edge / count;
        double Half(int edge) => _widths / 2 * Math.Sqrt(edge == 0 ? pipe.Sections[0] : edge == count ? pipe.Sections[^1] : (pipe.Sections[edge - 1] + pipe.Sections[edge]) / 2);
        ImmutableArray<Place> roof = [.. Enumerable.Range(0, count + 1).Select(i => new Place(X(i), _middle - Half(i)))];
        ImmutableArray<Place> floor = [.. Enumerable.Range(0, count + 1).Select(i => new Place(X(i), _middle + Half(i)))];
        var colours = Colours(frame, intake);
        var under = intake ? -0.8 : 0.8;
        pen.Named(intake ? IntakeGas : ExhaustGas, gas => gas.Put(new Shades(
            [.. roof, .. floor.Reverse()],
            // Each cell reaches a little under the next, or the ground shows as a line between them.
            [.. Enumerable.Range(0, count).Select(i => new Shade([[roof[i], roof[i + 1] with { X = roof[i + 1].X + under }, floor[i + 1] with { X = floor[i + 1].X + under }, floor[i]]], Colour(colours[i])))])));
        var wall = new Stroke(Role.Ink, _size.Thick(2));
        pen.Polyline(roof, wall);
        pen.Polyline(floor, wall);
        pen.Line(seat, roof[0].Y, seat, floor[0].Y, wall);
    }

    private void Cylinder(Pen pen, int frame)
    {
        var (right, foot) = (Left + Bore, _size.Height - 3.4 * _size.Text);
        ImmutableArray<Place> room = [new(Left, _deck), new(right, _deck), new(right, foot), new(Left, foot)];
        pen.Named(CylinderGas, gas => gas.Put(new Shades(room, [new([room], Colour(CylinderColour(frame)))])));
        var (down, intake, exhaust) = Moves(frame);
        var wall = new Stroke(Role.Ink, _size.Thick(2));
        // One height wherever it stands, so that it can be moved; what hangs out of the cylinder is covered.
        var crown = 0.9 * _size.Text;
        pen.Named(Piston, p => p.Box(new Box(Left + 1, _deck + crown + down, Bore - 2, foot - _deck - crown), 0, Role.Panel, new Stroke(Role.Ink, _size.Thick(1.4))));
        pen.Box(new Box(Left - 1, foot, Bore + 2, _size.Height - foot), 0, Role.Ground);
        pen.Segments([(new(Left, _deck), new(Left, foot)), (new(right, _deck), new(right, foot)), (new(Left, _deck), new(right, _deck))], wall);
        Valve(pen, IntakeValve, Left + 0.26 * Bore, intake, Role.Blue);
        Valve(pen, ExhaustValve, Left + 0.74 * Bore, exhaust, Role.Brass);
    }

    private void Valve(Pen pen, string key, double x, double lift, Role role) => pen.Named(key, v =>
    {
        var head = 0.2 * Bore;
        v.Line(x, _middle, x, _deck + lift, new Stroke(role, _size.Thick(2)));
        v.Line(x - head, _deck + lift + 1, x + head, _deck + lift + 1, new Stroke(role, _size.Thick(4)));
    });

    private void ColourScale(Pen pen)
    {
        var t = _size.Text;
        var (left, right, top) = (0.3 * _size.Width, 0.7 * _size.Width, _size.Height - 2.9 * t);
        ImmutableArray<Place> box = [new(left, top), new(right, top), new(right, top + 0.8 * t), new(left, top + 0.8 * t)];
        var each = (right - left) / SpeedColours.Steps;
        pen.Put(new Shades(box, [.. Enumerable.Range(0, SpeedColours.Steps).Select(i => new Shade(
            [[new(left + i * each, top), new(left + (i + 1) * each + 0.5, top), new(left + (i + 1) * each + 0.5, top + 0.8 * t), new(left + i * each, top + 0.8 * t)]], SpeedColours.Step(i)))]));
        var unit = Unit.Default(Dimension.Pressure, _units);
        string Words(double over) => Print.Bare(over, Dimension.Pressure, _units, Math.Abs(unit.FromSi(_high)) < 100 ? 1 : 0).Replace('-', '−');
        pen.Text(left - 0.5 * t, top + 0.75 * t, Words(_low), t, Role.Quiet, Anchor.End);
        pen.Text(right + 0.5 * t, top + 0.75 * t, Words(_high), t, Role.Quiet);
        pen.Text(_size.Width / 2, _size.Height - 0.6 * t, Lettering.Fit($"{unit.Name} over the outside air", t, _size.Width), t, Role.Quiet, Anchor.Middle);
    }
}
