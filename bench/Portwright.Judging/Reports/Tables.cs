using System.Globalization;
using System.Text;
using Portwright.Judging.Faults;
using Portwright.Judging.Trial;

namespace Portwright.Judging.Reports;

/// <summary>The rates as plain text, 80 columns.</summary>
public static class Tables
{
    public static string Of(Run run, Rates rates)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(rates);
        var text = new StringBuilder();
        void Line(FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture).TrimEnd());
        Line($"{rates.Healthy} healthy jobs, {run.Faulty.Count} with one fault; seed {run.Extent.Seed}.");
        Line($"");
        Line($"healthy jobs with anything false   above 0.9: {rates.AnyFalse * 100,6:F2} in 100");
        Line($"                                 above 0.995: {rates.AnyCertain * 100,6:F2} in 100");
        Line($"false alarms above 0.9 a healthy job: {rates.AJob:F3}");
        if (rates.Broke > 0) Line($"An error instead of an answer on {rates.Broke} jobs. {rates.FirstBroken}");
        Line($"");
        Line($"{"rule, on healthy jobs: false in 1000 jobs",-42}{"> 0.5",9}{"> 0.9",9}{"> 0.995",9}{"true",9}");
        var many = Math.Max(1, rates.Healthy) / 1000.0;
        foreach (var r in rates.Rules) Line($"  {r.Key,-40}{r.Half / many,9:F1}{r.Nine / many,9:F1}{r.Certain / many,9:F1}{r.True / many,9:F1}");
        Line($"");
        Line($"{"fault: found in 100 (said at 0.9 or more)",-42}{"small",9}{"middle",9}{"large",9}{"false",9}");
        foreach (var fault in rates.Faults.GroupBy(f => f.Fault))
        {
            string Of(Size size) => fault.FirstOrDefault(f => f.Size == size) is { } f ? (100.0 * f.Found / f.Of).ToString("F0", CultureInfo.InvariantCulture) : "";
            Line($"  {fault.Key,-40}{Of(Size.Small),9}{Of(Size.Middle),9}{Of(Size.Large),9}{100.0 * fault.Sum(f => f.False) / fault.Sum(f => f.Of),9:F0}");
        }

        Line($"");
        Line($"{"where the readings suffice: found in 100",-42}{"small",12}{"middle",12}{"large",12}");
        foreach (var fault in rates.Faults.GroupBy(f => f.Fault).Where(f => f.Any(r => r.Enough < r.Of)))
        {
            string Of(Size size) => fault.FirstOrDefault(f => f.Size == size) is not { } f ? "" : f.Enough == 0 ? "- of 0"
                : string.Create(CultureInfo.InvariantCulture, $"{100.0 * f.FoundOfEnough / f.Enough:F0} of {f.Enough}");
            Line($"  {fault.Key,-40}{Of(Size.Small),12}{Of(Size.Middle),12}{Of(Size.Large),12}");
        }

        Line($"");
        Line($"{"said, in 100",-42}{"mean",9}{"was so",9}{"of",9}");
        foreach (var c in rates.Calibration)
        {
            Line($"  {Class(c, " to "),-40}{c.Said * 100,9:F1}{c.Share * 100,9:F1}{c.Of,9}");
        }

        Line($"");
        Line($"{"so, in 100 of",-25}{string.Concat(rates.Calibration.Select(c => Class(c, "-").PadLeft(11)))}");
        foreach (var rule in rates.ByRule) Line($"  {rule.Key,-23}{string.Concat(rule.Classes.Select(SoOf))}");

        return text.ToString();
    }

    private static string Class(CalibrationRate c, string to) => string.Create(CultureInfo.InvariantCulture, $"{c.From * 100:F0}{to}{c.To * 100:F0}");

    private static string SoOf(CalibrationRate c) => c.Of == 0 ? $"{"-",11}" : string.Create(CultureInfo.InvariantCulture, $"{$"{c.Share * 100:F0} of {c.Of}",11}");
}
