using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Families;

/// <summary>What one lift of a sweep has in doubt by itself, as a share of its flow: what all lifts share (meter, plate, leak, weather, set-up) is left out.</summary>
internal static class LiftDoubt
{
    /// <summary>Of the point: repeat, last digit, lift set anew.</summary>
    public static double Of(LiftPoint point)
    {
        var digits = Digits(point);
        return Math.Sqrt(point.EffectiveArea.Contributions.Where(c => Sources.IsRepeat(c.Source) || Sources.IsLiftSetting(c.Source) || digits.Contains(c.Source)).Sum(c => c.Amount * c.Amount))
            / point.EffectiveArea.Value;
    }

    /// <summary>Of one reading, without its repeat: last digit, lift set anew.</summary>
    public static double OfOneReading(LiftPoint point)
    {
        var digits = Digits(point);
        var setting = point.EffectiveArea.Contributions.Where(c => Sources.IsLiftSetting(c.Source)).Sum(c => Math.Abs(c.Amount));
        var digit = point.Readings.Average(r => r.EffectiveArea.Contributions.Where(c => digits.Contains(c.Source)).Sum(c => c.Amount * c.Amount));
        return Math.Sqrt(setting * setting + digit) / point.EffectiveArea.Value;
    }

    private static HashSet<string> Digits(LiftPoint point) => [.. point.Readings.Select(r => Sources.Resolution(Sources.ReadingName(r.Reading.Id)))];
}
