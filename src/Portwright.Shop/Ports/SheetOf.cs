using System.Reflection;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What the sheet is of: job, customer, head, port, cut, both days, whose hand.</summary>
public static class SheetOf
{
    /// <summary>The program and its version, as printed in the title block: the version's words without the commit behind its plus sign.</summary>
    public static string Program { get; } =
        $"Portwright {typeof(SheetOf).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0]}";

    internal static Sentence Title(PortSheet sheet) => $"{Capital(sheet.Port.Fact.Name)}, cut {sheet.Cut.Fact.Number}";

    internal static Sentence Place(PortSheet sheet) => sheet.Job.Fact.Customer.Length > 0
        ? (Sentence)$"{sheet.Job.Fact.Name}, {sheet.Job.Fact.Customer}, {sheet.Head.Fact.Name}"
        : $"{sheet.Job.Fact.Name}, {sheet.Head.Fact.Name}";

    /// <summary>The days of the test: of its sweeps, else the cut's own.</summary>
    internal static Sentence Tested(PortSheet sheet) =>
        Sentence.Join(" and ", (sheet.Flow?.Sweeps.Select(s => s.Day).Distinct().Order() ?? Enumerable.Repeat(sheet.Cut.Fact.Date, 1)).Select(d => (Sentence)$"{d}"));

    internal static Part What(PortAtCut port, DateOnly? printed)
    {
        var sheet = port.Sheet;
        var rows = new List<NamedValue>();
        void Row(string key, Sentence name, Sentence value)
        {
            if (!value.IsEmpty) rows.Add(new(key, name, value));
        }

        Row("customer", $"customer", Sentence.Plain(sheet.Job.Fact.Customer));
        Row("done", $"done at cut {sheet.Cut.Fact.Number}", Sentence.Plain(sheet.Cut.Fact.Done));
        if (sheet.Cut.Fact.Hours is { } hours) Row("hours", $"hours at it", $"{hours.Si(Dimension.Duration) / 3600:0.##} h");
        Row("tested", $"{(sheet.Flow is null ? "day of the cut" : "tested")}", Tested(sheet));
        if (printed is { } day) Row("printed", $"printed", $"{day}");
        if (sheet.Port.Fact.Valve is { } valve)
        {
            Row("valve", $"valve", $"{Quantity.Length(valve.HeadDiameter)}, stem {Quantity.Length(valve.StemDiameter)}; seat {new Quantity(valve.SeatAngle, Dimension.Angle)}, {Quantity.Length(valve.SeatWidth)} wide");
            Row("throat", $"throat", $"{Quantity.Length(valve.ThroatDiameter)}, {Quantity.Share(valve.ThroatDiameter / valve.HeadDiameter)} of the valve by diameter");
        }

        if (port.Survey.PortVolume is { } volume) Row("volume", $"port volume", $"{Quantity.Of(volume, Dimension.Volume).By(PortNumber.VolumeKey)} by burette");
        return new Part("sheet", $"This sheet", [new Values("of", rows)]);
    }

    internal static IReadOnlyList<NamedValue> TitleBlock(PortAtCut port, DateOnly? printed)
    {
        var sheet = port.Sheet;
        var sweep = sheet.Flow?.Sweeps[^1].Sweep.Entry;
        var hand = sweep?.Hand is { Length: > 0 } of ? of : sheet.Cut.Entry.Hand;
        List<NamedValue> fields =
        [
            new("job", $"job", Sentence.Plain(sheet.Job.Fact.Name)),
            new("customer", $"customer", Sentence.Plain(sheet.Job.Fact.Customer)),
            new("head", $"head", Sentence.Plain(sheet.Head.Fact.Name)),
            new("port", $"port", Sentence.Plain(sheet.Port.Fact.Name)),
            new("cut", $"cut", $"{sheet.Cut.Fact.Number}"),
            new("tested", $"tested", Tested(sheet)),
            new("standard-air", $"standard air", BenchSaid.Air(sheet)),
            new("bench", $"bench", Sentence.Plain(sheet.Bench?.Fact.Name ?? "no bench card")),
            new("hand", $"hand", Sentence.Plain(hand)),
            new("program", $"program", Sentence.Plain(Program)),
        ];
        if (printed is { } day) fields.Insert(6, new("printed", $"printed", $"{day}"));
        return fields;
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
