using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;

namespace Portwright.Judging.Faults;

/// <summary>The narrowest section of one port 3, 7, 14 percent under its sisters': three is a core shifted by the thickness of a scraper, fourteen a pushrod wall left standing. The flow loses a third of it at full lift.</summary>
public sealed class SmallPinch() : Fault("pinch small against its sisters", ["small-against-sisters", "pinch-limits"], "low-against-sisters", "port-speed-against-plan")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        var small = By(size, 0.03, 0.07, 0.14);
        var pinch = port.At(StationRole.Pinch);
        pinch.Field.Fill(job.SistersOf(port)[0].At(StationRole.Pinch).Section.Sized(1 - small));
        port.Faults.Add(lift => 1 - small / 3 * Math.Pow(lift / port.Top, 2));
        job.Looks.Pinches.UnionWith(job.Of(port.Kind));
        return On(port);
    }
}

/// <summary>Throat of 83.5, 82, 79 percent of the valve, where 85 is the least the trade leaves; full lift pays for it.</summary>
public sealed class SmallThroat() : Fault("throat too small for its valve", ["throat-too-small"], "low-against-sisters", "small-against-sisters", "bowl-too-large")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        Throats.Cut(port, By(size, 0.835, 0.82, 0.79));
        var loss = By(size, 0.005, 0.012, 0.03);
        port.Faults.Add(lift => 1 - loss * Math.Pow(lift / port.Top, 2));
        return On(port);
    }
}

/// <summary>Throat of 93.5, 95, 97 percent of the valve, where 92 leaves the last seat worth the name; low lift pays for it.</summary>
public sealed class LargeThroat() : Fault("throat too large for its valve", ["throat-too-large"], "low-against-sisters", "seat-limits-low-lift")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        Throats.Cut(port, By(size, 0.935, 0.95, 0.97));
        var loss = By(size, 0.005, 0.01, 0.02);
        port.Faults.Add(lift => 1 - loss * Math.Clamp(1 - lift / (0.2 * port.Valve.Head), 0, 1));
        return On(port);
    }
}

internal static class Throats
{
    public static void Cut(MadePort port, double share)
    {
        port.Valve = port.Valve with { Throat = share * port.Valve.Head, SeatWidth = Math.Min(port.Valve.SeatWidth, 0.4 * (1 - share) * port.Valve.Head) };
        port.At(StationRole.Throat).Field.Fill(RoundedSection.Round(port.Valve.Throat));
    }
}

/// <summary>Bowl of 1.28, 1.42, 1.60 times the throat's area, where 1.12 is a full one: past it the air must slow down and be sped up again.</summary>
public sealed class LargeBowl() : Fault("bowl too large", ["bowl-too-large"], "low-against-sisters", "volume-disagrees")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        var bowl = port.At(StationRole.Bowl);
        bowl.Resize(By(size, 1.28, 1.42, 1.60) * port.At(StationRole.Throat).Section.Area / bowl.Section.Area);
        var loss = By(size, 0.005, 0.01, 0.02);
        port.Faults.Add(lift => 1 - loss * lift / port.Top);
        job.Looks.Sections.Add(port);
        return On(port);
    }
}

/// <summary>Metal .005, .015, .030 in under the shop's limit at one place.</summary>
public sealed class ThinWall() : Fault("thin wall", ["thin-metal"])
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        var at = job.Draw.Whole(0, port.Walls.Count - 1);
        var limit = job.Draw.Of(0.080, 0.100, 0.120) * 0.0254;
        port.Walls[at] = port.Walls[at] with { Limit = limit, Thickness = limit - By(size, 0.005, 0.015, 0.030) * 0.0254 };
        job.Looks.Sounded.Add(port);
        return On(port);
    }
}

/// <summary>All intakes a seventh small in section, and a plan that drives the air through them at 130, 150, 175 m/s by piston area and mean piston speed, where 110 is fast.</summary>
public sealed class SmallForPlan() : Fault("ports too small for the plan", ["port-speed-against-plan"], "pinch-limits")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var intakes = job.Of(PortKind.Intake);
        foreach (var port in intakes)
        {
            foreach (var role in (StationRole[])[StationRole.Flange, StationRole.Pinch, StationRole.ShortSide]) port.At(role).Resize(0.86);
            port.Faults.Add(lift => 1 - 0.03 * lift / port.Top);
        }

        var pinch = intakes[0].At(StationRole.Pinch).Section.Area;
        job.Engine.HighestSpeed *= By(size, 130.0, 150.0, 175.0) / (job.Engine.Piston * job.Engine.PistonSpeed / pinch);
        job.Looks.Sections.UnionWith(job.Draw.Some(intakes, job.Draw.Of(1, 2, intakes.Count)));
        return On([.. intakes.Where(job.Looks.Sections.Contains)]);
    }
}
