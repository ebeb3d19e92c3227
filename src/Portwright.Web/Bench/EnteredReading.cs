using Portwright.Shop.Bench;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Web.Bench;

/// <summary>
/// A reading as the browser's entry box sends it. The browser numbers it and keeps it until it hears that it is saved, so that it may
/// come twice; everything the entry says follows from what is here, so that the second is the same as the first.
/// </summary>
/// <param name="Number">Made in the browser when Enter was pressed.</param>
/// <param name="Lift">With its unit.</param>
/// <param name="Text">What was typed, letter for letter: the meter's number, and after an @ the test pressure it was read at where that is not the sweep's.</param>
/// <param name="At">When Enter was pressed.</param>
/// <param name="Kept">It was asked about and is kept all the same.</param>
/// <param name="Pass">The pass of the run it was asked for in; null where the run has one alone.</param>
/// <param name="PressureKept">So was its test pressure.</param>
public sealed record EnteredReading(Guid Number, string Lift, string Text, DateTimeOffset At, string? Range, string? Pressure, string? Sound, string? Hand,
    string? MeterTemperature = null, string? PlenumTemperature = null, bool Kept = false,
    int? Pass = null, bool PressureKept = false)
{
    private static readonly string[] Sounds = ["steady", "whistles", "rattles"];

    /// <summary>What stands after an @.</summary>
    private string? AfterAt => ReadingPressure.Apart(Text).At;

    private string NumberText => ReadingPressure.Apart(Text).Number;

    /// <summary>The test pressure it was read at, as typed; empty where it was the sweep's.</summary>
    public string PressureText => AfterAt ?? Pressure?.Trim() ?? "";

    /// <summary>The same with another number for the meter.</summary>
    public string WithNumber(string number) => AfterAt is { } at ? $"{number} @{at}" : number;

    /// <summary>The same at another test pressure.</summary>
    public string WithPressure(string pressure) => $"{NumberText} @{pressure}";

    /// <summary>That it was kept against the question, to be saved with it; numbered after it, so that the second of two is the first.</summary>
    public Entry Confirmation(Entry reading, string question) => Confirmation(reading, 1, new Confirmed(reading.Subject, "Reading", Text, question));

    /// <summary>That its test pressure was.</summary>
    public Entry PressureConfirmation(Entry reading, string question) => Confirmation(reading, 2, new Confirmed(reading.Subject, EnteredRoom.TestPressure.Label, PressureText, question));

    private Entry Confirmation(Entry reading, byte mark, Confirmed confirmed)
    {
        var bytes = Number.ToByteArray();
        bytes[^1] ^= mark;
        var number = new Guid(bytes);
        return new Entry(number, number, reading.Job, reading.At, reading.Hand, "typed", confirmed);
    }

    /// <summary>The entry to save, or the sentence that says why not; both where it is a number that no reading can be, of which one may have been meant.</summary>
    public (Entry? Entry, string? Problem) Entry(Kept<Sweep> sweep, Kept<BenchCard> bench, UnitSystem units)
    {
        if (Number == Guid.Empty)
        {
            return (null, "The reading came without a number. Load the page again and type it again.");
        }

        if (!TypedNumber.TryParse(Lift, Dimension.Lift, units, "Lift", out var lift, out var problem))
        {
            return (null, problem);
        }

        var name = string.IsNullOrEmpty(Range) ? sweep.Fact.Range : Range;
        if (bench.Fact.RangeNamed(name) is not { } range)
        {
            return (null, $"The bench card has no range named \"{name}\". Choose one that is on the card.");
        }

        var dimension = MeterOf.ReadingDimension(range);
        var number = NumberText;
        string? outOfRange = null;
        if (!TypedNumber.TryParse(number, dimension, units, "Reading", DecimalMark.Either, Unit.Find(range.Unit, dimension), out var reading, out problem))
        {
            if (EntryJudge.BareNumber(number, dimension, units, Unit.Find(range.Unit, dimension)) is not { } bare) return (null, problem);
            (reading, outOfRange) = (bare, problem);
        }

        if (!Optional(PressureText, Dimension.Pressure, "Test pressure", out var pressure)
            || !Optional(MeterTemperature, Dimension.Temperature, "Temperature at the meter", out var meter)
            || !Optional(PlenumTemperature, Dimension.Temperature, "Temperature in the plenum", out var plenum))
        {
            return (null, problem);
        }

        var fact = new FlowReading(
            sweep.Id,
            lift,
            reading,
            name == sweep.Fact.Range ? "" : name,
            pressure,
            meter,
            plenum,
            Sound: Sounds.Contains(Sound) ? Sound! : "",
            Pass: Pass);
        var hand = new string([.. (Hand ?? "").Where(c => !char.IsControl(c)).Take(40)]);
        return (new Entry(Number, Number, sweep.Entry.Job, At, hand, "typed", fact), outOfRange);

        bool Optional(string? text, Dimension of, string field, out Typed? value)
        {
            value = null;
            if (string.IsNullOrWhiteSpace(text))
            {
                return true;
            }

            if (!TypedNumber.TryParse(text, of, units, field, out var typed, out problem))
            {
                return false;
            }

            value = typed;
            return true;
        }
    }
}
