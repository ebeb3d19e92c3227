using System.Globalization;
using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Faults;

/// <summary>Two neighbouring lifts stand in each other's line: small between lifts whose flow differs least, large where it differs most.</summary>
public sealed class LiftsSwapped() : Fault("two lifts swapped", ["lifts-swapped"], "reading-out-of-line", "curve-unsteady", "backs-up", "low-against-sisters", "seat-limits-low-lift")
{
    public override Planted Plant(MadeJob job, Size size) => On(OneOfAny(job));

    public override void Slip(MadeJob job, Book book, Size size, Planted planted)
    {
        var port = planted.Ports[0];
        var sweep = Slips.SweepOf(job, book, port);
        var lifts = job.Looks.Lifts[port.Kind];
        var pairs = Enumerable.Range(0, lifts.Count - 1).OrderBy(i => port.AreaAt(lifts[i + 1]) / port.AreaAt(lifts[i])).ToList();
        // The pair that differs least may differ by nothing: the small slip is a third of the way up.
        var at = pairs[By(size, pairs.Count / 3, 2 * pairs.Count / 3, pairs.Count - 1)];
        var (low, high) = (job.Pencil.Lift(lifts[at]), job.Pencil.Lift(lifts[at + 1]));
        foreach (var (id, fact) in book.All<FlowReading>().Where(r => r.Fact.Sweep == sweep))
        {
            if (fact.Lift == low) book.Mistype<FlowReading>(id, r => r with { Lift = high });
            else if (fact.Lift == high) book.Mistype<FlowReading>(id, r => r with { Lift = low });
        }
    }
}

/// <summary>One number typed wrong, two digits changed about or one lost: off by about 6, 15, 40 percent of the reading, taking of all such slips the one nearest that.</summary>
public sealed class ReadingMistyped() : Fault("one reading mistyped", ["reading-out-of-line"], "lifts-swapped", "curve-unsteady", "backs-up", "low-against-sisters", "seat-limits-low-lift")
{
    /// <summary>The lowest or highest lift may as well be the port's own, a seat or a fall: there it takes a second reading to tell.</summary>
    public override bool IsReadEnough(MadeShop shop, Size size)
    {
        var (job, lifts) = (shop.Job, shop.Job.Looks.Lifts[shop.Planted!.Ports[0].Kind]);
        return job.Looks.Repeats * job.Looks.SweepsAPort > 1 || (job.SlippedAt != job.Pencil.Lift(lifts[0]) && job.SlippedAt != job.Pencil.Lift(lifts[^1]));
    }

    public override Planted Plant(MadeJob job, Size size) => On(OneOfAny(job));

    public override void Slip(MadeJob job, Book book, Size size, Planted planted)
    {
        var sweep = Slips.SweepOf(job, book, planted.Ports[0]);
        var wanted = By(size, 0.06, 0.15, 0.40);
        var slips =
            from r in book.All<FlowReading>()
            where r.Fact.Sweep == sweep
            from slip in Slips.Of(r.Fact.Reading)
            let off = Math.Abs(slip.Value / r.Fact.Reading.Value - 1)
            where off > 0.03
            select (r.Id, Slip: slip, Off: off);
        var (id, typed, _) = slips.MinBy(s => Math.Abs(Math.Log(s.Off / wanted)));
        book.Mistype<FlowReading>(id, r => r with { Reading = typed });
        job.SlippedAt = book.All<FlowReading>().First(r => r.Id == id).Fact.Lift;
    }
}

/// <summary>What a pen does to a number.</summary>
public static class Slips
{
    /// <summary>One of the port's sweeps.</summary>
    public static Guid SweepOf(MadeJob job, Book book, MadePort port) => job.Draw.Of([.. book.All<Sweep>().Where(s => s.Fact.Cut == port.Cut).Select(s => s.Id)]);

    /// <summary>Every number it may become by changing two neighbouring digits about or losing one.</summary>
    public static IEnumerable<Typed> Of(Typed number)
    {
        var text = number.Text.Split(' ')[0];
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsDigit(text[i])) continue;
            if (i + 1 < text.Length && char.IsDigit(text[i + 1]) && text[i] != text[i + 1])
                yield return Read(text[..i] + text[i + 1] + text[i] + text[(i + 2)..], number.Unit);
            if (text.Count(char.IsDigit) > 2) yield return Read(text.Remove(i, 1), number.Unit);
        }
    }

    /// <summary>Every number it may become by one digit typed for another.</summary>
    public static IEnumerable<Typed> OneDigit(Typed number)
    {
        var text = number.Text.Split(' ')[0];
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsDigit(text[i])) continue;
            for (var digit = '0'; digit <= '9'; digit++) yield return Read(text[..i] + digit + text[(i + 1)..], number.Unit);
        }
    }

    private static Typed Read(string text, string unit) => new(double.Parse(text, CultureInfo.InvariantCulture), unit, $"{text} {unit}");
}
