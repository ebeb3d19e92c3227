using System.Globalization;
using Portwright.Engine.Runs;

namespace Portwright.Figures;

/// <summary>The cycle as it is shown: from the top where it fires, so that the gas exchange lies whole in the middle.</summary>
public static class CycleAngle
{
    /// <summary>Row of the trace for degrees after the firing top, 0 to 719.</summary>
    public static int Row(int shown) => (shown + CycleTrace.Rows / 2) % CycleTrace.Rows;

    /// <summary>Where the piston stands, in a few words: <c>36° after the top, valves overlap</c>.</summary>
    public static string Words(int shown)
    {
        var stroke = shown / 180 % 4;
        var name = stroke switch { 0 => "firing stroke", 1 => "exhaust stroke", 2 => "intake stroke", _ => "compression" };
        return string.Create(CultureInfo.InvariantCulture, $"{name}, {shown % 180}° after {(stroke % 2 == 0 ? "top" : "bottom")}");
    }

    internal static readonly (int Shown, string Words)[] Ticks = [(0, "fires"), (180, "bottom"), (360, "top, overlap"), (540, "bottom"), (720, "fires")];
}
