using System.Globalization;
using System.Text.RegularExpressions;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>
/// What a heading says of its column. The words are those found over columns in the trade: common practice, no source.
/// </summary>
internal sealed partial record HeadingText(ColumnRole Role, Dimension Dimension, string? Unit, Typed? TestPressure, string Port, int? Cut, int? Repeat, string Rest, string Why)
{
    private static readonly Dimension[] ReadingDimensions = [Dimension.VolumeFlow, Dimension.MassFlow, Dimension.Fraction];

    internal bool SaysFlow { get; private init; }

    internal static HeadingText Of(string text, UnitSystem system)
    {
        var rest = Spaces().Replace(text.Length > 200 ? text[..200] : text, " ").Trim();
        var nothing = new HeadingText(ColumnRole.LeftOut, Dimension.VolumeFlow, null, null, "", null, null, rest, "");
        if (rest.Length == 0) return nothing;
        if (TemperatureWord().IsMatch(rest) && (MeterWord().IsMatch(rest) || PlenumWord().IsMatch(rest)))
        {
            var (role, why) = PlenumWord().IsMatch(rest) ? (ColumnRole.PlenumTemperature, "headed as temperature of the plenum") : (ColumnRole.MeterTemperature, "headed as temperature at the meter");
            return nothing with { Role = role, Dimension = Dimension.Temperature, Unit = UnitIn(PlenumWord().Replace(MeterWord().Replace(rest, " "), " "), Dimension.Temperature)?.Name, Why = why };
        }
        if (NoReading().Match(rest) is { Success: true } no) return nothing with { Why = $"\"{no.Value.Trim()}\" is no reading" };

        if (LiftWord().IsMatch(rest)) return nothing with { Role = ColumnRole.Lift, Dimension = Dimension.Lift, Unit = UnitIn(LiftWord().Replace(rest, " "), Dimension.Lift)?.Name, Why = "headed as lift" };
        if (PressureWord().IsMatch(rest) && !FlowWord().IsMatch(rest))
            return nothing with { Role = ColumnRole.TestPressure, Dimension = Dimension.Pressure, Unit = UnitIn(PressureWord().Replace(rest, " "), Dimension.Pressure)?.Name, Why = "headed as test pressure" };
        if (PortColumn().IsMatch(rest)) return nothing with { Role = ColumnRole.Port, Why = "headed as port" };
        if (RepeatColumn().IsMatch(rest)) return nothing with { Role = ColumnRole.Repeat, Dimension = Dimension.Count, Why = "headed as repeat" };
        if (CutColumn().IsMatch(rest)) return nothing with { Role = ColumnRole.Cut, Dimension = Dimension.Count, Why = "headed as cut" };
        if (RangeColumn().IsMatch(rest)) return nothing with { Role = ColumnRole.Range, Why = "headed as range" };

        return Reading(rest, system);
    }

    /// <summary>What a line of notes says of all readings: their unit and test pressure.</summary>
    internal static HeadingText OfNote(string text, UnitSystem system) => Reading(Spaces().Replace(text, " ").Trim(), system);

    private static HeadingText Reading(string rest, UnitSystem system)
    {
        Typed? pressure = null;
        var manometer = Manometer().IsMatch(rest);
        if (!manometer && AtPressure().Match(rest) is { Success: true } at
            && TypedNumber.TryParse(at.Groups["n"].Value + at.Groups["u"].Value, Dimension.Pressure, system, "Test pressure", out var typed, out _))
        {
            pressure = typed with { Text = at.Value.Trim() };
            rest = rest.Remove(at.Index, at.Length).Insert(at.Index, " ");
        }
        var dimension = manometer ? Dimension.Pressure : Dimension.VolumeFlow;
        Shop.Units.Unit? unit = null;
        foreach (var d in manometer ? [Dimension.Pressure] : ReadingDimensions)
        {
            if (UnitIn(rest, d, out var without) is not { } found) continue;
            (unit, dimension, rest) = (found, d, without);
            break;
        }
        var flow = unit is not null || FlowWord().IsMatch(rest);

        int? cut = null;
        if (CutNumber().Match(rest) is { Success: true } c)
        {
            cut = Int(c.Groups[1].Value);
            rest = rest.Remove(c.Index, c.Length);
        }
        else if (Untouched().IsMatch(rest))
        {
            cut = 0;
        }

        var port = string.Join(' ', PortName().Matches(rest).Select(m => m.Value.Trim()));
        if (port.Length > 0) rest = PortName().Replace(rest, " ");
        int? repeat = null;
        if (RepeatNumber().Match(rest) is { Success: true } r)
        {
            repeat = Int(r.Groups.Values.Skip(1).First(g => g.Success).Value);
            rest = rest.Remove(r.Index, r.Length);
        }
        rest = Spaces().Replace(FillWord().Replace(rest, " "), " ").Trim(' ', ',', ';', ':', '-', '_', '(', ')', '[', ']', '/', '.', '#');
        return new HeadingText(ColumnRole.Reading, dimension, unit?.Name, pressure, port, cut, repeat, rest, flow ? "headed as flow" : "") { SaysFlow = flow || manometer };
    }

    private static Shop.Units.Unit? UnitIn(string text, Dimension dimension) => UnitIn(text, dimension, out _);

    // In brackets first, then word by word from the end: "Lift (in)", "Lift mm", "Lift, in.".
    private static Shop.Units.Unit? UnitIn(string text, Dimension dimension, out string without)
    {
        without = text;
        foreach (Match bracket in Bracketed().Matches(text))
        {
            if (Shop.Units.Unit.Find(bracket.Groups[1].Value, dimension) is { Name.Length: > 0 } inside)
            {
                without = text.Remove(bracket.Index, bracket.Length).Insert(bracket.Index, " ");
                return inside;
            }
        }

        foreach (var word in Word().Matches(text).Reverse())
        {
            if (Shop.Units.Unit.Find(word.Value, dimension) is { Name.Length: > 0 } found)
            {
                without = text.Remove(word.Index, word.Length).Insert(word.Index, " ");
                return found;
            }
        }

        return null;
    }

    private static int? Int(string digits) => int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;

    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    [GeneratedRegex(@"\s+", Options)] private static partial Regex Spaces();
    [GeneratedRegex(@"[\(\[\{]([^\)\]\}]{1,24})[\)\]\}]", Options)] private static partial Regex Bracketed();
    [GeneratedRegex(@"[^\s,;:()\[\]@]+", Options)] private static partial Regex Word();
    [GeneratedRegex(@"\b(lift|ventilhub|hub|lev[ée]e|alzata|alzada|lyft)\b", Options)] private static partial Regex LiftWord();
    [GeneratedRegex(@"\b(cfm|flow|air|durchfluss|d[ée]bit|flusso|caudal|l/s|lps)\b|m[³3]/h", Options)] private static partial Regex FlowWord();
    [GeneratedRegex(@"\b(test ?press(ure)?|depression|press(ure)?|pressure drop|delta ?p|dp|vacuum)\b|Δ\s?p", Options)] private static partial Regex PressureWord();
    [GeneratedRegex(@"\b(temp(erature)?|thermometer)\b|°\s?[cf]\b|^t\b", Options)] private static partial Regex TemperatureWord();
    [GeneratedRegex(@"\b(flow ?)?(meter|metre|element)\b", Options)] private static partial Regex MeterWord();
    [GeneratedRegex(@"\b(plenum|settling (chamber|tank))\b", Options)] private static partial Regex PlenumWord();
    [GeneratedRegex(@"\b(manometer|mano|indicated|inclined)\b", Options)] private static partial Regex Manometer();
    [GeneratedRegex(@"^(port|cyl(inder)?|runner|hole|head|side|valve|type|int?/exh?|i/e)s?[ ._]?(no|#|nr|number|id|name)?\.?$", Options)] private static partial Regex PortColumn();
    [GeneratedRegex(@"^(run|rep(eat)?|pass|trial|test)s?[ ._]?(no|#|nr|number)?\.?$", Options)] private static partial Regex RepeatColumn();
    [GeneratedRegex(@"^(cut|stage|version)[ ._]?(no|#|nr|number)?\.?$", Options)] private static partial Regex CutColumn();
    [GeneratedRegex(@"^(meter |flow )?(range|rng|plate|orifice)[ ._]?(no|#|nr|number|used)?\.?$", Options)] private static partial Regex RangeColumn();
    [GeneratedRegex("""(?:@|\bat\b)?\s*(?<![\d.,A-Za-z#])(?<n>\d{1,4}(?:[.,]\d{1,3})?)\s*(?<u>(?:"|”|″|''|in\.?|inch(?:es)?)\s?(?:of\s)?(?:h2o|h₂o|wc|wg|water)?|mm\s?h2o|cm\s?h2o|kpa|hpa|pa|mbar|psi)(?![A-Za-z\d/])""", Options)] private static partial Regex AtPressure();
    [GeneratedRegex(@"\bcut[ ._#]*(\d{1,3})\b", Options)] private static partial Regex CutNumber();
    [GeneratedRegex(@"\b(baseline|as received|as cast|stock|untouched)\b", Options)] private static partial Regex Untouched();
    [GeneratedRegex(@"(?<![A-Za-z])(?:(?:intake|inlet|int|exhaust|exh|ex|port|cylinder|cyl|runner)(?![A-Za-z])\.?[ _]?(?:no\.?|nr\.?|#)?[ _]?\d{0,2}(?!\d)|(?:in|i|e)[ _]?#?\d{1,2}(?![\dA-Za-z]))", Options)] private static partial Regex PortName();
    [GeneratedRegex(@"\b(?:run|test|pass|rep(?:eat)?|trial|no\.?)[ ._#]*(\d{1,2})\b|#\s*(\d{1,2})\b|(?<=^|[A-Za-z)\]_\s-])(\d{1,2})\s*[)\]]?\s*$", Options)] private static partial Regex RepeatNumber();
    [GeneratedRegex(@"\b(flow|air|reading|rdg|measured|value|run|test|pass|rep(eat)?|trial|bench|of|the|in|at|range)\b|@", Options)] private static partial Regex FillWord();
    [GeneratedRegex(@"\b(avg|ave|average|mean|median|max|maximum|min|minimum|total|sum|diff|difference|delta(?! ?p)|gain|loss|change|improvement|increase|ratio|cd|coeff|coefficient|vel|velocity|fps|ft/s|m/s|speed|notes?|comments?|remarks?|date|time|area|curtain|target|goal|std|stdev|dev|sd|spread|temp|temperature|baro|barometer|humidity|rh|operator|by|diameter|mittelwert|schnitt|summe|moyenne|media|hp|power)\b|lift\s*/\s*(d|dia)|\bl/d\b|\be/i\b|\bex/int?\b|\bΔ(?!\s?p)|^±|^%\s*(diff|gain|chg|of\s+(?!range|scale|full))", Options)] private static partial Regex NoReading();
}
