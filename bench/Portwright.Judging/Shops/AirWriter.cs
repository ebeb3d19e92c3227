using Portwright.Judging.Ports;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>Holds probe, ball and flag in the ports that are looked into, each port once more on the bench for it.</summary>
public sealed class AirWriter(MadeJob job, Book book)
{
    public void Write()
    {
        if (job.Looks.Rings.Count + job.Looks.Balls.Count + job.Looks.Flags.Count == 0) return;
        book.NextMorning();
        job.Bench.NextDay();
        if (job.Looks.Morning) new MorningWriter(job, book).Check();
        var (rings, balls) = (new RingWriter(job, book), new BallWriter(job, book));
        foreach (var port in job.Ports)
        {
            var held = Held(port);
            foreach (var ring in job.Looks.Rings.Where(r => r.Port == port)) rings.Write(ring, held);
            var places = job.Looks.Balls.Where(b => b.Port == port).ToList();
            if (places.Count > 0) balls.Write(port, places, held);
            foreach (var flag in job.Looks.Flags.Where(f => f.Port == port)) Flags(flag, held);
        }
    }

    /// <summary>One putting of the port on the bench, at a high lift it was swept at.</summary>
    private HeldPort Held(MadePort port)
    {
        var lifts = job.Looks.Lifts[port.Kind];
        var lift = lifts[^Math.Min(lifts.Count, job.Looks.HeldFromTop)];
        var direction = port.Kind == PortKind.Intake || job.Drawn.Contains(port) ? FlowDirection.Draw : FlowDirection.Blow;
        var area = port.AreaAt(lift) * (1 + job.Draw.Normal(job.Bench.Truth.SetUpScatter));
        var range = job.Bench.RangeFor(area);
        var setting = new BenchSetting(job.Bench.Id, direction, job.Pencil.Lift(lift), job.Bench.TestPressure, range.Card.Name);
        return new HeldPort(port, lift, area, range, direction, setting, job.Bench.TestPressure.Si(Dimension.Pressure), job.Bench.Room.Air);
    }

    private void Flags(PlacesLooked looked, HeldPort held)
    {
        foreach (var bearing in looked.Bearings)
        {
            var amiss = job.FlagsAt.FirstOrDefault(f => f.Port == looked.Port && f.Station == looked.Station && f.Bearing == bearing);
            var trembles = looked.Station == StationRole.ShortSide && bearing == 6 ? 0.35 : 0.15;
            var stands = amiss?.Steadiness ?? (job.Draw.Chance(trembles) ? Steadiness.Trembles : Steadiness.Still);
            // Sound air makes a flag tremble at most.
            if (amiss is not null) job.KnownAir.Seen(stands switch { Steadiness.Still => 1 - trembles, Steadiness.Trembles => trembles, _ => 0 });
            book.Add(new FlagReading(
                looked.Port.Cut, looked.Port.At(looked.Station).Id, bearing, held.Setting.Lift, job.Bench.TestPressure, stands, job.Draw.Chance(0.3) ? 6 : null));
        }
    }
}

/// <summary>A port on the bench while something is held in it.</summary>
/// <param name="Area">Effective area in this set-up, m2.</param>
/// <param name="Pressure">Test pressure, Pa.</param>
public sealed record HeldPort(
    MadePort Port, double Lift, double Area, MadeRange Range, FlowDirection Direction, BenchSetting Setting, double Pressure, Physics.Air.AirState Room)
{
    public LocalAir At(MadeStation station) => LocalAir.Of(Area, station.Section.Area, Direction, Room, Pressure);
}
