using System.Globalization;
using System.Text;

namespace Portwright.Shop.Units;

/// <summary>Which mark stands before the decimals.</summary>
public enum DecimalMark
{
    /// <summary>Not known: either is read, and what could be both is refused.</summary>
    Either,
    /// <summary>The point; a comma groups thousands.</summary>
    Point,
    /// <summary>The comma; a point groups thousands.</summary>
    Comma,
}

/// <summary>Reads the number at the start of a text and hands back what follows it.</summary>
internal static class NumberText
{
    internal enum Outcome { Number, NotANumber, Ambiguous }

    private const string Fractions = "½¼¾⅛⅜⅝⅞⅓⅔";
    private static readonly double[] FractionValues = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875, 1.0 / 3, 2.0 / 3];

    internal static Outcome Read(string text, DecimalMark mark, out double number, out string rest)
    {
        number = double.NaN;
        rest = "";
        var s = text.AsSpan().Trim();
        var negative = false;
        if (s.Length > 0 && s[0] is '-' or '−' or '–' or '+')
        {
            negative = s[0] != '+';
            s = s[1..].TrimStart();
        }
        if (s.Length == 0 || s[0] is not ((>= '0' and <= '9') or '.' or ',') && !Fractions.Contains(s[0]))
            return Outcome.NotANumber;

        var outcome = Unsigned(s, mark, out number, out var used);
        if (outcome != Outcome.Number) return outcome;
        if (negative) number = -number;
        rest = s[used..].Trim().ToString();
        // What follows a number must be a unit, not more digits: "300 250" is two numbers, not one. The one exception is 0.001" (thou).
        return rest.Length > 0 && (char.IsDigit(rest[0]) || rest[0] is '.' or ',' or '-' or '+') ? Outcome.NotANumber : Outcome.Number;
    }

    /// <summary>The two readings of an ambiguous comma, for the message.</summary>
    internal static string BothWays(string text)
    {
        var digits = new string([.. text.Where(c => char.IsAsciiDigit(c) || c == ',')]);
        return $"{digits.Replace(",", "", StringComparison.Ordinal)} or {digits.Replace(',', '.')}";
    }

    private static Outcome Unsigned(ReadOnlySpan<char> s, DecimalMark mark, out double number, out int used)
    {
        number = double.NaN;
        used = 0;
        if (Fractions.IndexOf(s[0]) is >= 0 and var alone)
        {
            number = FractionValues[alone];
            used = 1;
            return Outcome.Number;
        }

        var end = DigitsAndMarks(s);
        var outcome = Decimal(s[..end], mark, out number);
        if (outcome != Outcome.Number) return outcome;
        used = end;
        var whole = s[..end].IndexOfAnyExceptInRange('0', '9') < 0;

        if (end < s.Length && Fractions.IndexOf(s[end]) is >= 0 and var after)
        {
            if (!whole) return Outcome.NotANumber;
            number += FractionValues[after];
            used = end + 1;
            return Outcome.Number;
        }
        if (end < s.Length && s[end] is 'e' or 'E' && Exponent(s[(end + 1)..], out var power, out var length))
        {
            number *= Math.Pow(10, power);
            used = end + 1 + length;
            return double.IsFinite(number) ? Outcome.Number : Outcome.NotANumber;
        }
        return whole ? Fraction(s, end, ref number, ref used) : Outcome.Number;
    }

    /// <summary>1/2, 1 1/2 and 1-1/2.</summary>
    private static Outcome Fraction(ReadOnlySpan<char> s, int end, ref double number, ref int used)
    {
        if (end < s.Length && s[end] is '/' or '⁄' or '∕')
        {
            // A slash with no digit behind belongs to a unit (1/min) or to nothing; the unit table decides.
            var below = DigitRun(s[(end + 1)..]);
            if (below == 0) return Outcome.Number;
            return Quotient(number, s.Slice(end + 1, below), end + 1 + below, ref number, ref used);
        }
        var at = end;
        while (at < s.Length && (s[at] is '-' || char.IsWhiteSpace(s[at]))) at++;
        var top = at > end && at < s.Length ? DigitRun(s[at..]) : 0;
        if (top is 0 or > 4 || at + top >= s.Length || s[at + top] is not ('/' or '⁄' or '∕')) return Outcome.Number;
        var bottom = DigitRun(s[(at + top + 1)..]);
        if (bottom == 0) return Outcome.NotANumber;
        var whole = number;
        var part = double.Parse(s.Slice(at, top), NumberStyles.None, CultureInfo.InvariantCulture);
        var outcome = Quotient(part, s.Slice(at + top + 1, bottom), at + top + 1 + bottom, ref number, ref used);
        if (outcome == Outcome.Number && number >= 1) return Outcome.NotANumber;
        number += whole;
        return outcome;
    }

    private static Outcome Quotient(double top, ReadOnlySpan<char> digits, int end, ref double number, ref int used)
    {
        if (digits.Length > 4) return Outcome.NotANumber;
        var bottom = double.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
        if (bottom == 0) return Outcome.NotANumber;
        number = top / bottom;
        used = end;
        return Outcome.Number;
    }

    private static Outcome Decimal(ReadOnlySpan<char> s, DecimalMark mark, out double number)
    {
        number = double.NaN;
        var commas = s.Count(',');
        var points = s.Count('.');
        var spaced = s.IndexOfAny('\u00A0', '\u202F', '\u2009') >= 0;
        char? decimals, groups;
        if (mark == DecimalMark.Point)
        {
            (decimals, groups) = ('.', ',');
        }
        else if (mark == DecimalMark.Comma)
        {
            (decimals, groups) = (',', '.');
        }
        else if (commas > 0 && points > 0)
        {
            var commaLast = s.LastIndexOf(',') > s.LastIndexOf('.');
            (decimals, groups) = commaLast ? (',', '.') : ('.', ',');
        }
        else if (commas > 1)
        {
            (decimals, groups) = (null, ',');
        }
        else if (points > 1)
        {
            (decimals, groups) = (null, '.');
        }
        else if (commas == 1)
        {
            var at = s.IndexOf(',');
            if (!spaced && at is >= 1 and <= 3 && s[0] != '0' && s.Length - at - 1 == 3) return Outcome.Ambiguous;
            (decimals, groups) = (',', null);
        }
        else
        {
            (decimals, groups) = ('.', null);
        }

        var cut = decimals is { } d ? s.LastIndexOf(d) : -1;
        if (cut >= 0 && s.Count(decimals!.Value) > 1) return Outcome.NotANumber;
        var whole = cut >= 0 ? s[..cut] : s;
        var part = cut >= 0 ? s[(cut + 1)..] : [];
        if (part.IndexOfAnyExceptInRange('0', '9') >= 0) return Outcome.NotANumber;
        if (spaced) groups = groups is { } g && whole.Contains(g) ? null : ' ';

        var kept = new StringBuilder(s.Length);
        if (!Whole(whole, groups, kept)) return Outcome.NotANumber;
        if (kept.Length == 0 && part.Length == 0) return Outcome.NotANumber;
        if (kept.Length == 0) kept.Append('0');
        if (part.Length > 0) kept.Append('.').Append(part);
        return double.TryParse(kept.ToString(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && double.IsFinite(number)
            ? Outcome.Number
            : Outcome.NotANumber;
    }

    /// <summary>Digits, with groups of exactly three behind each group mark.</summary>
    private static bool Whole(ReadOnlySpan<char> s, char? groups, StringBuilder kept)
    {
        var sinceMark = -1;
        foreach (var c in s)
        {
            if (char.IsAsciiDigit(c))
            {
                kept.Append(c);
                if (sinceMark >= 0) sinceMark++;
                continue;
            }
            var isMark = groups == ' ' ? c is '\u00A0' or '\u202F' or '\u2009' : c == groups;
            if (!isMark || kept.Length == 0 || (sinceMark < 0 ? kept.Length > 3 : sinceMark != 3)) return false;
            sinceMark = 0;
        }
        return sinceMark is -1 or 3;
    }

    private static int DigitsAndMarks(ReadOnlySpan<char> s)
    {
        var i = 0;
        while (i < s.Length)
        {
            if (char.IsAsciiDigit(s[i]) || s[i] is '.' or ',') i++;
            // A no-break or thin space groups thousands only between digits; before a unit it is a space.
            else if (s[i] is '\u00A0' or '\u202F' or '\u2009' && i > 0 && DigitRun(s[(i + 1)..]) == 3 && !IsFractionNext(s[(i + 1)..])) i++;
            else break;
        }
        return i;
    }

    private static bool IsFractionNext(ReadOnlySpan<char> s) => s.Length > 3 && s[3] is '/' or '⁄' or '∕';

    private static int DigitRun(ReadOnlySpan<char> s)
    {
        var i = 0;
        while (i < s.Length && char.IsAsciiDigit(s[i])) i++;
        return i;
    }

    private static bool Exponent(ReadOnlySpan<char> s, out int power, out int length)
    {
        var sign = s.Length > 0 && s[0] is '-' or '−' or '+' ? 1 : 0;
        var digits = DigitRun(s[sign..]);
        length = sign + digits;
        power = 0;
        if (digits is 0 or > 3) return false;
        power = int.Parse(s.Slice(sign, digits), NumberStyles.None, CultureInfo.InvariantCulture);
        if (sign == 1 && s[0] != '+') power = -power;
        return true;
    }
}
