using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;

namespace Portwright.Judging.Faults;

/// <summary>Small is what a careful porter would want to know, middle what he would cut for, large what nobody should miss.</summary>
public enum Size
{
    Small,
    Middle,
    Large,
}

/// <summary>A fault that is planted in an otherwise healthy job, by size. Sizes are trade sense, with the reason beside each.</summary>
/// <param name="name">In the porter's words.</param>
/// <param name="found">Keys of the rules that say it.</param>
/// <param name="fair">Keys of what may fairly follow from it: neither found nor false.</param>
public abstract class Fault(string name, string[] found, params string[] fair)
{
    public string Name { get; } = name;

    public IReadOnlySet<string> Found { get; } = found.ToHashSet();

    public IReadOnlySet<string> Fair { get; } = fair.ToHashSet();

    /// <summary>True where what was read suffices to tell it: always, where it is read directly, as a section is, or a plate.</summary>
    public virtual bool IsReadEnough(MadeShop shop, Size size) => true;

    /// <summary>Puts the fault into metal, air or bench before anything is typed, and sees that what shows it is read.</summary>
    public abstract Planted Plant(MadeJob job, Size size);

    /// <summary>Slips of the pen, after all is typed.</summary>
    public virtual void Slip(MadeJob job, Book book, Size size, Planted planted)
    {
    }

    protected static T By<T>(Size size, T small, T middle, T large) => size switch { Size.Small => small, Size.Middle => middle, _ => large };

    protected Planted On(params MadePort[] ports) => new(this, ports);

    /// <summary>One port of a kind, its own casting's scatter of flow taken off: what it has is the fault alone.</summary>
    protected static MadePort One(MadeJob job, PortKind kind)
    {
        var port = job.Draw.Of([.. job.Of(kind)]);
        port.Level = job.SistersOf(port).Average(s => s.Level);
        port.Lean = job.SistersOf(port).Average(s => s.Lean);
        return port;
    }

    protected static MadePort OneOfAny(MadeJob job) => One(job, job.Draw.Chance(0.6) ? PortKind.Intake : PortKind.Exhaust);
}

/// <summary>What was planted, and in which ports.</summary>
public sealed record Planted(Fault Fault, IReadOnlyList<MadePort> Ports);
