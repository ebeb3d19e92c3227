using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Store.Export;

/// <summary>The tables a sweep or a port is exported as: what was read, and what it comes to.</summary>
public static class SweepSheets
{
    /// <summary>Every reading of the port as it was typed, with who typed it and when; corrected ones as they stand now, hidden ones left out.</summary>
    /// <exception cref="KeyNotFoundException">No such port.</exception>
    public static SheetTable Raw(Ledger ledger, Guid port)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var of = ledger.Get<Port>(port);
        var rows = new List<IReadOnlyList<SheetCell>>();
        foreach (var cut in ledger.CutsOf(port))
        {
            foreach (var sweep in ledger.SweepsOf(cut.Id))
            {
                foreach (var reading in ledger.ReadingsOf(sweep.Id))
                {
                    var fact = reading.Fact;
                    var pressure = fact.TestPressure ?? sweep.Fact.TestPressure;
                    rows.Add(
                    [
                        of.Fact.Name, (double)cut.Fact.Number, Short(sweep.Id), sweep.Fact.Direction.ToString(),
                        fact.Lift.Text, fact.Lift.Value, fact.Lift.Unit,
                        fact.Reading.Text, fact.Reading.Value, fact.Reading.Unit,
                        fact.Range.Length > 0 ? fact.Range : sweep.Fact.Range, pressure.Value, pressure.Unit,
                        fact.Sound, sweep.Fact.Fitted, reading.Entry.At.ToString("O", CultureInfo.InvariantCulture), reading.Entry.Hand, reading.Entry.Source, reading.Entry.Reason,
                    ]);
                }
            }
        }

        return new SheetTable("Readings", [$"Readings of {HeadName(ledger, of)}{of.Fact.Name} as they were typed"],
        [
            "Port", "Cut", "Set-up", "Direction", "Lift as typed", "Lift", "Lift unit", "Reading as typed", "Reading", "Reading unit",
            "Range", "Test pressure", "Test pressure unit", "Sound", "Fitted", "When", "Hand", "Source", "Reason of correction",
        ], rows);
    }

    /// <summary>What each cut of the port flows at each lift, with expanded uncertainty (95 percent).</summary>
    /// <exception cref="KeyNotFoundException">No such port.</exception>
    public static SheetTable Reduced(Ledger ledger, Guid port, UnitSystem system)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var of = ledger.Get<Port>(port);
        var lift = Unit.Default(Dimension.Lift, system);
        var flow = Unit.Default(Dimension.VolumeFlow, system);
        var area = Unit.Find("mm²", Dimension.Area)!;
        var rows = new List<IReadOnlyList<SheetCell>>();
        var notes = new List<string> { $"Flow of {HeadName(ledger, of)}{of.Fact.Name}, reduced" };
        foreach (var cut in ledger.CutsOf(port))
        {
            if (CutFlow.Of(ledger, cut) is not { } result) continue;
            var curve = result.Curve;
            var note = $"Restated at {Print.Number(curve.RestatedAt, Dimension.Pressure, system)} in air of {Print.Number(curve.Air.Pressure, Dimension.Barometer, system)}, "
                + $"{Print.Number(curve.Air.Temperature, Dimension.Temperature, system)}, {Print.Number(curve.Air.RelativeHumidity, Dimension.Fraction, system)} humidity; doubt covers 95 percent";
            if (!notes.Contains(note)) notes.Add(note);
            foreach (var point in curve.Points)
            {
                rows.Add(
                [
                    of.Fact.Name, (double)cut.Fact.Number, curve.Direction.ToString(), Figures(lift.FromSi(point.Lift)), (double)point.Readings.Count,
                    Figures(flow.FromSi(point.Flow.Value)), Figures(point.Flow.Expanded() / flow.Factor),
                    Figures(area.FromSi(point.EffectiveArea.Value)), Figures(point.EffectiveArea.Expanded() / area.Factor),
                ]);
            }
        }
        return new SheetTable("Flow", notes,
        [
            "Port", "Cut", "Direction", $"Lift ({lift.Name})", "Readings", $"Flow ({flow.Name})", $"Flow doubt ({flow.Name})", $"Effective area ({area.Name})", $"Effective area doubt ({area.Name})",
        ], rows);
    }

    private static string HeadName(Ledger ledger, Kept<Port> port) => ledger.Find<Head>(port.Fact.Head) is { Fact.Name: { Length: > 0 } name } ? name + ", " : "";

    // Nine figures keep every digit that means something, and drop what is only binary.
    private static double Figures(double value) => double.IsFinite(value) ? double.Parse(value.ToString("G9", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : value;

    private static string Short(Guid id) => id.ToString("N", CultureInfo.InvariantCulture)[..8];
}
