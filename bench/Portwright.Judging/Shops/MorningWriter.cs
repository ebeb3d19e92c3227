using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>Calibrates the bench, and proves it before work and sometimes after.</summary>
public sealed class MorningWriter(MadeJob job, Book book)
{
    private MadeBench Bench => job.Bench;

    /// <summary>Weeks before the job came: each range through a plate, with a leak test.</summary>
    public void Calibrate()
    {
        foreach (var range in Bench.Ranges)
        {
            var plate = Bench.Plates.MinBy(p => Math.Abs(p.Area - 0.8 * range.Most))!;
            if (plate.Area > 1.05 * range.Most) continue;
            var count = job.Draw.Whole(1, 3);
            book.AddForShop(new Calibration(
                Bench.Id, range.Card.Name, book.Day, [.. Enumerable.Range(0, count).Select(_ => Bench.ReadPlate(plate, range))], Bench.Room.Typed(), "",
                job.Draw.Chance(0.7) ? Bench.ReadLeak() with { Range = range.Card.Name, Reading = Bench.Shows(range, 0, Physics.TestPiece.FlowDirection.Draw) } : null));
        }
    }

    /// <summary>Leak and one plate, the same one every day.</summary>
    public void Check(string notes = "") => book.AddForShop(new MorningCheck(
        Bench.Id, book.Day, Bench.Room.Typed(), Bench.ReadLeak(), [Bench.ReadPlate(Bench.Plates[0])], notes));
}
