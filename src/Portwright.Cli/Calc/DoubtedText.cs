using System.Text.RegularExpressions;
using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>
/// Reads a number with its doubt: <c>71.4 ± 0.2 %</c>, <c>28inH2O+-0.1inH2O</c>, <c>250 cfm +- 1 %</c>, <c>12.7 mm</c>.
/// </summary>
/// <remarks>
/// What stands behind ± is half of a 95 percent interval, as the answers of <c>calc</c> print it, so that an answer can be typed into the next
/// question: standard uncertainty = half width / 1.96. A percent behind ± is a share of the value, except where the value itself is
/// in percent: then it is points of percent.
/// </remarks>
internal static partial class DoubtedText
{
    private static readonly double Coverage = Student.TwoSidedFactor(0.95, double.PositiveInfinity);

    [GeneratedRegex(@"±|\+/-|\+-|\+−")]
    private static partial Regex PlusMinus();

    [GeneratedRegex(@"^\s*(?<number>[0-9.,/]+(?:[eE][+-]?[0-9]+)?)\s*(?<unit>.*)$")]
    private static partial Regex NumberAndUnit();

    /// <summary>What was typed of the value, without its doubt; "71.4 +- 0.2 %": the unit behind the doubt is the value's too.</summary>
    public static string ValueOf(string text, Dimension dimension)
    {
        var parts = PlusMinus().Split(text);
        var left = parts[0].Trim();
        if (parts.Length != 2 || NumberAndUnit().Match(parts[1]) is not { Success: true } doubt) return left;
        var unit = doubt.Groups["unit"].Value.Trim();
        return TypedNumber.TrySplit(left, DecimalMark.Either, out _, out var own) && own.Length == 0 && Unit.Find(unit, dimension) is not null && !(unit == "%" && dimension == Dimension.Ratio)
            ? $"{left} {unit}" : left;
    }

    /// <summary>Splits the doubt off and reads both; on failure <paramref name="problem"/> names field, value and cure.</summary>
    public static bool TryRead(string text, string field, Dimension dimension, UnitSystem system, out InputEstimate value, out string problem)
    {
        value = InputEstimate.Exact(field, 0);
        var parts = PlusMinus().Split(text);
        if (parts.Length > 2)
        {
            problem = $"{field} \"{text}\" has more than one ±. Type it as \"28 inH2O +- 0.1 inH2O\".";
            return false;
        }

        var left = ValueOf(text, dimension);
        Match? doubt = null;
        if (parts.Length == 2)
        {
            doubt = NumberAndUnit().Match(parts[1]);
            if (!doubt.Success)
            {
                problem = $"{field} \"{text}\": what follows ± is not a number. Type it as \"28 inH2O +- 0.1 inH2O\".";
                return false;
            }
        }

        if (!TypedNumber.TryParse(left, dimension, system, field, out var typed, out problem)) return false;
        var si = typed.Si(dimension);
        if (doubt is null)
        {
            value = InputEstimate.Exact(field, si);
            return true;
        }
        return ReadDoubt(doubt, text, typed, si, field, dimension, out value, out problem);
    }

    private static bool ReadDoubt(Match doubt, string text, Typed typed, double si, string field, Dimension dimension, out InputEstimate value, out string problem)
    {
        value = InputEstimate.Exact(field, si);
        if (!TypedNumber.TryParse(doubt.Groups["number"].Value, Dimension.Ratio, UnitSystem.UsCustomary, field + " ±", out var half, out problem)) return false;
        var unitText = doubt.Groups["unit"].Value.Trim();
        double width;
        if (unitText is "%" or "percent" && dimension != Dimension.Fraction)
        {
            width = Math.Abs(si) * half.Value / 100;
        }
        else
        {
            var unit = Unit.Find(unitText.Length == 0 ? typed.Unit : unitText, dimension);
            if (unit is null)
            {
                problem = $"{field} \"{text}\": \"{unitText}\" is not a unit known here. Use the unit of the value itself, or % of it.";
                return false;
            }
            // A doubt is a difference: 1 °F is 5/9 K, wherever the scale begins.
            width = half.Value * unit.Factor;
        }
        value = new InputEstimate(field, si, width / Coverage);
        return true;
    }

    /// <summary>The half width that was typed, in SI.</summary>
    public static double HalfWidth(InputEstimate value) =>
        value.StandardUncertainty == 0 ? 0 : value.StandardUncertainty * Student.TwoSidedFactor(0.95, value.DegreesOfFreedom);
}
