using System.Globalization;
using System.Text;
using Portwright.Judging.Shops;
using Portwright.Judging.Trial;

namespace Portwright.Judging.Reports;

/// <summary>One shop looked at: what it is, and everything said of it.</summary>
public static class OneShop
{
    public static string Of(Options options, int number)
    {
        ArgumentNullException.ThrowIfNull(options);
        var fault = options.Extent.Only is null ? null : options.Extent.Chosen.FirstOrDefault();
        var made = MadeShop.Of(options.Extent.Seed, Tried.NumberOf(fault, options.Size, number), fault, options.Size);
        var job = made.Job;
        var text = new StringBuilder();
        void Line(FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture));
        Line($"{job.Heads} head(s), intake {job.Engine.Intake.Law}; meter {job.Bench.Ranges[0].Card.Meter.GetType().Name}, {job.Looks.SweepsAPort} sweep(s) of {job.Looks.Repeats}");
        Line($"true set-up scatter {job.Bench.Truth.SetUpScatter * 100:F2} percent, card {job.Bench.Card.Doubt.SetUpScatter * 100:F2}");
        if (made.Planted is { } planted) Line($"planted: {planted.Fault.Name}, {options.Size}, in {string.Join(", ", planted.Ports.Select(p => $"{p.Kind} {p.Head}/{p.Cylinder}"))}");
        Line($"balls in {job.Looks.Balls.Select(b => b.Port).Distinct().Count()} port(s), the probe in {job.Looks.Rings.Select(b => b.Port).Distinct().Count()}");
        if (made.Planted is not null) Line($"in the air {job.KnownAir.Apart():F1} deviations off a sound port, flags e^{job.KnownAir.Flags:F1}");
        foreach (var said in Asking.Of(made).OrderByDescending(s => s.Chance).Where(s => s.Chance is null or > 0.3))
            Line($"{said.Chance,7:F3} {said.Became,-6} {said.Port!.Kind} {said.Port.Head}/{said.Port.Cylinder} {said.Key}");
        return text.ToString();
    }
}
