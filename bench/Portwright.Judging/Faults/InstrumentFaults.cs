using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;
using Portwright.Shop.Sections;
using Portwright.Shop.Units;

namespace Portwright.Judging.Faults;

/// <summary>The probe reads 10, 15, 20 percent off everywhere: a hose half off, a tip bent, another fluid. A sound one is within three.</summary>
public sealed class ProbeOff() : Fault("ring does not close: probe", ["closure-fails"], "instruments-disagree", "ball-not-as-written")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        Looked.Inside(job, port, StationRole.ShortSide, 6, ring: true);
        var off = 1 + job.Draw.Of(-1, 1) * By(size, 0.10, 0.15, 0.20);
        var ringed = job.Looks.Rings.Select(r => r.Port).Distinct().ToList();
        foreach (var each in ringed) job.ProbeOff[each] = off;
        return On([.. ringed]);
    }
}

/// <summary>A width or height typed wrong, so that the section is about 5, 10, 20 percent off.</summary>
public sealed class SectionMistyped() : Fault(
    "ring does not close: section mistyped", ["closure-fails"], "small-against-sisters", "volume-disagrees", "pinch-limits", "instruments-disagree", "port-speed-against-plan", "ball-not-as-written")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        Looked.Inside(job, port, StationRole.ShortSide, 6, ring: true);
        return On(port);
    }

    public override void Slip(MadeJob job, Book book, Size size, Planted planted)
    {
        var port = planted.Ports[0];
        var (id, section) = book.All<Section>().First(s => s.Fact.Station == port.At(StationRole.ShortSide).Id);
        var wanted = By(size, 0.05, 0.10, 0.20);
        // Only such slips as leave a section: corners must go in.
        var radius = section.Form == SectionForm.Rectangle ? section.Readings[2].Si(Dimension.Length) : section.CornerRadii?[0].Si(Dimension.Length) ?? 0;
        var lengths = section.Form == SectionForm.Widths ? section.Readings.Count : 2;
        // Of all such slips the one that moves the area nearest to what is wanted: one width of many moves it little.
        var wrong = Enumerable.Range(0, lengths)
            .SelectMany(i => Wrong(section.Readings[i], radius).Select(w => section with { Readings = [.. section.Readings.Select((r, j) => i == j ? w : r)] }))
            .Select(s => (Section: s, Off: Off(s, section))).Where(s => s.Off > 0)
            .MinBy(s => Math.Abs(Math.Log(s.Off / wanted))).Section;
        book.Mistype<Section>(id, _ => wrong);
    }

    /// <summary>Share by which the area is moved; nothing where the slip leaves no section.</summary>
    private static double Off(Section wrong, Section right) => SectionShape.Of(wrong, out _) is { } moved && SectionShape.Of(right, out _) is { } was ? Math.Abs(moved.Area / was.Area - 1) : 0;

    /// <summary>Slips of a digit, and a digit read for its neighbour.</summary>
    private static IEnumerable<Typed> Wrong(Typed width, double radius)
    {
        foreach (var slip in Slips.Of(width).Concat(Slips.OneDigit(width)))
        {
            if (slip.Value != width.Value && slip.Si(Dimension.Length) > 2 * radius && slip.Value < 2 * width.Value) yield return slip;
        }
    }
}

/// <summary>The ball written down is another than the one held: true over typed 1.125, 1.286, 1.429 (such as .5625 held and .5000 typed, .5625 and .4375, .6250 and .4375) or the other way about.</summary>
public sealed class BallMistyped() : Fault("ball's diameter mistyped", ["ball-not-as-written"], "instruments-disagree")
{
    public override bool IsReadEnough(MadeShop shop, Size size) => Suffices.ForTheAir(shop.Job, this, 1);

    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        Looked.Inside(job, port, StationRole.ShortSide, 6, ring: true);
        var ratio = By(size, 1.125, 1.286, 1.429);
        job.BallTyped[port] = job.Draw.Chance(0.5) ? ratio : 1 / ratio;
        return On(port);
    }
}

/// <summary>At one place ball and probe see speeds that differ by 20, 35, 60 percent: one of the two was held elsewhere.</summary>
public sealed class OnePlaceWrong() : Fault(
    "probe against ball at one place", ["instruments-disagree"], "lazy-floor-or-corner", "busy-roof", "uneven-sides", "closure-fails", "short-side-too-fast", "ball-not-as-written")
{
    public override bool IsReadEnough(MadeShop shop, Size size) => Suffices.ForTheAir(shop.Job, this, Looked.Places(shop.Job, shop.Planted!.Ports[0], _ => true), shop.Job.PlacesOff[0]);

    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        Looked.Inside(job, port, StationRole.ShortSide, 6, ring: true);
        var factor = 1 + By(size, 0.20, 0.35, 0.60);
        job.PlacesOff.Add(new PlaceOff(port, StationRole.ShortSide, job.Draw.Of(12.0, 3.0, 6.0, 9.0), job.Draw.Chance(0.5), job.Draw.Chance(0.5) ? factor : 1 / factor));
        return On(port);
    }
}

/// <summary>The burette off by 3, 6, 12 percent: a bubble, a refill not counted, another port's figure.</summary>
public sealed class BuretteWrong() : Fault("burette against sections", ["volume-disagrees"])
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        job.Looks.Filled.Add(port);
        job.BuretteOff[port] = 1 + job.Draw.Of(-1, 1) * By(size, 0.03, 0.06, 0.12);
        return On(port);
    }
}
