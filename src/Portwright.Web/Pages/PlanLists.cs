using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Pages;

/// <summary>Lists of an engine plan, a row a line.</summary>
public static class PlanLists
{
    private const int MostRows = 800;

    public static string Of(IReadOnlyList<SpeedWeight>? weights) =>
        string.Join('\n', (weights ?? []).Select(w => string.Create(CultureInfo.InvariantCulture, $"{w.Speed:0.###} {w.Weight:0.###}")));

    public static string Of(IReadOnlyList<LiftAtAngle>? table, UnitSystem units) =>
        string.Join('\n', (table ?? []).Select(r => $"{Print.Bare(r.Crank, Dimension.Angle, units)} {Print.Bare(r.Lift, Dimension.Lift, units, units == UnitSystem.UsCustomary ? 4 : 3)}"));

    public static IReadOnlyList<SpeedWeight>? Weights(Typing typed) => Rows(typed, "weights", "Weights", "3000 1", parts =>
        Number(parts[0], Dimension.Ratio, UnitSystem.Si) is { } speed && Number(parts[1], Dimension.Ratio, UnitSystem.Si) is { } weight ? new SpeedWeight(speed, weight) : null);

    public static IReadOnlyList<LiftAtAngle>? Table(Typing typed, string name, UnitSystem units) => Rows(typed, name, "Lift table", units == UnitSystem.UsCustomary ? "-20 .0125" : "-20 0.32", parts =>
        Number(parts[0], Dimension.Angle, units) is { } angle && Number(parts[1], Dimension.Lift, units) is { } lift ? new LiftAtAngle(angle, lift) : null);

    private static List<T>? Rows<T>(Typing typed, string name, string label, string example, Func<string[], T?> read)
        where T : class
    {
        var lines = (typed.Raw(name) ?? "").Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (lines.Length > MostRows)
        {
            typed.Refuse(name, $"{label}: more than {MostRows} rows. Make the list shorter.");
            return null;
        }

        var rows = new List<T>();
        foreach (var line in lines)
        {
            var parts = line.Split([' ', '\t', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (parts.Length != 2 || read(parts) is not { } row)
            {
                typed.Refuse(name, $"{label}: \"{(line.Length > 30 ? line[..30] + "…" : line)}\" is no row of two numbers. Type each as {example}, a row a line.");
                return null;
            }

            rows.Add(row);
        }

        return rows.Count > 0 ? rows : null;
    }

    private static double? Number(string text, Dimension dimension, UnitSystem units) =>
        TypedNumber.TryParse(text, dimension, units, "", out var value, out _) ? value.Si(dimension) : null;
}
