using Portwright.Engine.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Everything that moves in the two figures of a cycle, frame by frame, ready for a page's script: it puts things where they are said to be, and works nothing out.</summary>
/// <param name="Words">What stands beside each frame.</param>
/// <param name="Intake">Colours along the intake, a letter a cell.</param>
/// <param name="Cylinder">Colour in the cylinder, a letter a frame.</param>
/// <param name="Palette">The colour of each letter from <c>a</c> on.</param>
/// <param name="Layouts">How far things move in each layout, from where <see cref="First"/> has them.</param>
public sealed record CycleMotion(
    int First, int Step, IReadOnlyList<string> Words, IReadOnlyList<string> Intake, IReadOnlyList<string> Exhaust, string Cylinder, IReadOnlyList<string> Palette, IReadOnlyList<CycleLayout> Layouts)
{
    /// <param name="first">The frame the figures were drawn at.</param>
    /// <param name="layouts">The pipes and the trace's size of each layout; the pipes show one cycle.</param>
    public static CycleMotion Of(CycleTrace trace, double outside, UnitSystem units, int first, params IReadOnlyList<(PipesFigure Pipes, FigureSize Trace)> layouts)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(layouts);
        var pipes = layouts[0].Pipes;
        var frames = Enumerable.Range(0, pipes.Frames).ToList();
        return new(
            first, trace.Intake.FrameEvery, [.. frames.Select(f => WordsOf(trace, pipes.Shown(f), outside, units))],
            [.. frames.Select(f => pipes.Colours(f, true))], [.. frames.Select(f => pipes.Colours(f, false))], string.Concat(frames.Select(pipes.CylinderColour)),
            [.. Enumerable.Range(0, SpeedColours.Steps).Select(SpeedColours.Step)],
            [.. layouts.Select(l => CycleLayout.Of(l.Pipes, l.Trace, first))]);
    }

    /// <summary>What a frame says: the stroke, the pressures behind the valves, the Mach number behind the intake valve.</summary>
    public static string WordsOf(CycleTrace trace, int shown, double outside, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var row = CycleAngle.Row(shown);
        var decimals = units == UnitSystem.UsCustomary ? 0 : 1;
        string Over(double pressure) => Print.Number(pressure - outside, Dimension.Pressure, units, decimals).Replace('-', '−');
        return $"{CycleAngle.Words(shown)}: intake port {Over(trace.Intake.ValvePressure[row])}, exhaust port {Over(trace.Exhaust.ValvePressure[row])}, Mach {Print.Bare(trace.Intake.ValveMach[row], Dimension.Ratio, units, 2).Replace('-', '−')} behind the intake valve";
    }
}

/// <summary>How far things move in one layout, in its own unit, a number a frame.</summary>
public sealed record CycleLayout(IReadOnlyList<double> Piston, IReadOnlyList<double> IntakeValve, IReadOnlyList<double> ExhaustValve, IReadOnlyList<double> Cursor)
{
    internal static CycleLayout Of(PipesFigure pipes, FigureSize trace, int first)
    {
        var moves = Enumerable.Range(0, pipes.Frames).Select(pipes.Moves).ToList();
        var (from, to) = CycleFigure.Along(trace);
        double Place(int frame) => (to - from) * pipes.Shown(frame) / CycleTrace.Rows;
        static double Round(double value) => Math.Round(value, 1);
        return new(
            [.. moves.Select(m => Round(m.Piston - moves[first].Piston))], [.. moves.Select(m => Round(m.Intake - moves[first].Intake))],
            [.. moves.Select(m => Round(m.Exhaust - moves[first].Exhaust))], [.. moves.Select((_, i) => Round(Place(i) - Place(first)))]);
    }
}
