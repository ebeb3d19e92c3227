using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Families;

/// <summary>What one lift of a sweep has in doubt by itself, as a share of its flow: what all lifts share (meter, plate, leak, weather, set-up) is left out.</summary>
internal static class LiftDoubt
{
    /// <summary>A sweep's repeats count as scattering no more than so many times what the card says: a slip among them is no scatter of the bench. Judgement.</summary>
    public const double RepeatsAtMost = 2;

    /// <summary>Of the point: repeat, last digit, lift set anew.</summary>
    /// <param name="card">Scatter of repeats by the bench card, a share; zero where it does not say.</param>
    public static double Of(LiftPoint point, double card)
    {
        var digits = Digits(point);
        var repeat = Sum(point, Sources.IsRepeat);
        if (card > 0)
        {
            var most = RepeatsAtMost * card * point.EffectiveArea.Value;
            repeat = Math.Min(repeat, most * most / point.Readings.Count);
        }

        return Math.Sqrt(repeat + Sum(point, Sources.IsLiftSetting) + Sum(point, digits.Contains)) / point.EffectiveArea.Value;
    }

    /// <summary>Of one reading, without its repeat: last digit, lift set anew.</summary>
    public static double OfOneReading(LiftPoint point)
    {
        var digits = Digits(point);
        var setting = point.EffectiveArea.Contributions.Where(c => Sources.IsLiftSetting(c.Source)).Sum(c => Math.Abs(c.Amount));
        var digit = point.Readings.Average(r => r.EffectiveArea.Contributions.Where(c => digits.Contains(c.Source)).Sum(c => c.Amount * c.Amount));
        return Math.Sqrt(setting * setting + digit) / point.EffectiveArea.Value;
    }

    private static double Sum(LiftPoint point, Func<string, bool> of) => point.EffectiveArea.Contributions.Where(c => of(c.Source)).Sum(c => c.Amount * c.Amount);

    private static HashSet<string> Digits(LiftPoint point) => [.. point.Readings.Select(r => Sources.Resolution(Sources.ReadingName(r.Reading.Id)))];
}
