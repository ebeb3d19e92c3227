using Portwright.Shop.Heads;
using Portwright.Shop.Record;

namespace Portwright.Web.Heads;

/// <summary>How a head is drawn on its page: as saved, or as it was tapped since, which the address keeps until it is saved.</summary>
/// <param name="Lay">As drawn.</param>
/// <param name="Ports">As drawn.</param>
/// <param name="Drawn">False where nothing was touched since it was saved.</param>
public sealed record HeadState(Guid Head, HeadLay Lay, IReadOnlyList<(Guid Id, Port Port)> Ports, bool Drawn)
{
    /// <param name="mirrored">Ports drawn as mirror images, as <see cref="Key"/> names them with points between; null: as saved.</param>
    /// <param name="exhausts"><c>across</c> or <c>beside</c>.</param>
    /// <param name="first"><c>left</c> or <c>right</c>: where cylinder 1 lies.</param>
    public static HeadState Read(Kept<Head> head, IReadOnlyList<Kept<Port>> ports, string? mirrored, string? exhausts, string? first)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(ports);
        var saved = head.Fact.Lay ?? new HeadLay();
        var lay = new HeadLay(
            exhausts switch { "across" => ExhaustSide.Across, "beside" => ExhaustSide.WithIntakes, _ => saved.Exhausts },
            first switch { "left" => false, "right" => true, _ => saved.FromRight });
        var named = mirrored?.Split('.', StringSplitOptions.RemoveEmptyEntries).ToHashSet(StringComparer.Ordinal);
        return new(
            head.Id,
            lay,
            [.. ports.Select(p => (p.Id, named is null ? p.Fact : p.Fact with { Mirrored = named.Contains(Key(p.Fact)) }))],
            mirrored is not null || exhausts is not null || first is not null);
    }

    /// <summary>A port in the address: <c>i2</c>.</summary>
    public static string Key(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return FormattableString.Invariant($"{(port.Kind == PortKind.Intake ? 'i' : 'e')}{port.Cylinder}");
    }

    public string Href => $"/head/{Head}?mirrored={string.Join('.', Ports.Where(p => p.Port.Mirrored).Select(p => Key(p.Port)))}"
        + $"&exhausts={(Lay.Exhausts == ExhaustSide.Across ? "across" : "beside")}&first={(Lay.FromRight ? "right" : "left")}";

    public IReadOnlyList<PortLie> Along => PortLie.Along(Ports, Lay);

    /// <summary>One port the other way round.</summary>
    public HeadState Turned(Guid port) => this with { Ports = [.. Ports.Select(p => p.Id == port ? (p.Id, p.Port with { Mirrored = !p.Port.Mirrored }) : p)] };

    /// <summary>Every port the other way round.</summary>
    public HeadState TurnedWhole() => this with { Ports = [.. Ports.Select(p => (p.Id, p.Port with { Mirrored = !p.Port.Mirrored }))] };

    /// <summary>All ports by a pattern.</summary>
    public HeadState As(MirrorPattern pattern)
    {
        var cylinders = Cylinders;
        return this with { Ports = [.. Ports.Select(p => (p.Id, p.Port with { Mirrored = MirrorPatterns.IsMirrored(pattern, p.Port.Kind, p.Port.Cylinder, cylinders, Lay.Exhausts) }))] };
    }

    /// <summary>The highest number of a cylinder.</summary>
    public int Cylinders => Ports.Count == 0 ? 0 : Ports.Max(p => p.Port.Cylinder);

    /// <summary>Exhausts on the other side: an exhaust stays in its half of the cylinder, so that seen from its new flange it is the other way round.</summary>
    public HeadState ExhaustsElsewhere() => this with
    {
        Lay = Lay with { Exhausts = Lay.Exhausts == ExhaustSide.Across ? ExhaustSide.WithIntakes : ExhaustSide.Across },
        Ports = [.. Ports.Select(p => p.Port.Kind == PortKind.Exhaust ? (p.Id, p.Port with { Mirrored = !p.Port.Mirrored }) : p)],
    };

    /// <summary>Cylinder 1 at the other end; which ports are mirror images stays.</summary>
    public HeadState FromOtherEnd() => this with { Lay = Lay with { FromRight = !Lay.FromRight } };
}
