using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Bench;

/// <summary>One check plate on one range, morning by morning, on an individuals chart (NIST/SEMATECH 6.3.2.2).</summary>
/// <param name="Points">Date and measured over certified effective area.</param>
/// <param name="Chart">Centre line, limits and signals.</param>
public sealed record PlateChart(
    string Plate,
    string Range,
    IReadOnlyList<(DateOnly Date, Estimate Ratio)> Points,
    ControlChart Chart)
{
    public ChartAnswer Answer => Chart.Answer;

    public IReadOnlyList<string> Words => [.. Chart.Sentences.Select(w => $"Plate {Plate}, range {Range}: {w}")];

    public static PlateChart Of(string plate, string range, IReadOnlyList<(DateOnly Date, Estimate Ratio)> points) =>
        new(plate, range, points, ControlChart.Judge([.. points.Select(p => p.Ratio.Value)]));
}
