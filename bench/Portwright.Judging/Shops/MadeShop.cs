using Portwright.Judging.Chance;
using Portwright.Judging.Faults;
using Portwright.Judging.Ports;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>A job with its record as it was typed, and the truth behind it.</summary>
public sealed record MadeShop(MadeJob Job, Ledger Ledger, Planted? Planted)
{
    private static readonly DateTimeOffset FirstMorning = new(2025, 3, 3, 8, 0, 0, TimeSpan.Zero);

    /// <summary>Shop so-many of a seed: healthy, or with one fault.</summary>
    public static MadeShop Of(long seed, long number, Fault? fault = null, Size size = Size.Middle)
    {
        var draw = new Draw(seed, number);
        var job = new MadeJob(draw);
        var planted = fault?.Plant(job, size);
        var book = new Book(draw, FirstMorning.AddDays(-40));
        Write(job, book);
        fault?.Slip(job, book, size, planted!);
        return new MadeShop(job, Ledger.Of(book.Entries), planted);
    }

    private static void Write(MadeJob job, Book book)
    {
        var (bench, looks, draw) = (job.Bench, job.Looks, job.Draw);
        var mornings = new MorningWriter(job, book);
        bench.Id = book.AddForShop(bench.Card);
        if (looks.Calibrated) mornings.Calibrate();
        book.Wait(TimeSpan.FromDays(20));
        for (var i = 0; i < looks.EarlierMornings; i++)
        {
            book.NextMorning();
            bench.NextDay();
            mornings.Check();
        }

        book.Set(FirstMorning);
        bench.NextDay();
        bench.Moved *= 1 + job.BenchOff;
        book.AddJob(new Job("a job", "", job.Engine.Plan(4 * job.Heads, draw)));
        PortWriter.Write(job, book);
        Test(job, book, mornings);
        new ShapeWriter(job, book).Write();
        new AirWriter(job, book).Write();
        foreach (var port in job.Ports) WallWriter.Write(job, book, port);
    }

    /// <summary>Every port on the bench, so many a day; the second set-ups come after all have had their first.</summary>
    private static void Test(MadeJob job, Book book, MorningWriter mornings)
    {
        var (bench, looks) = (job.Bench, job.Looks);
        var queue = Enumerable.Range(0, looks.SweepsAPort).SelectMany(_ => job.Ports).ToList();
        var aDay = Math.Max(4, (queue.Count + job.Draw.Whole(1, 3) - 1) / job.Draw.Whole(1, 3));
        var writer = new SweepWriter(job, book);
        if (looks.Morning) mornings.Check();
        for (var i = 0; i < queue.Count; i++)
        {
            if (i > 0 && i % aDay == 0)
            {
                if (looks.Evening) mornings.Check("evening");
                book.NextMorning();
                bench.NextDay();
                if (looks.Morning) mornings.Check();
            }

            if (i == (int)(queue.Count * job.Noon)) job.AtNoon?.Invoke(bench);
            var port = queue[i];
            writer.Write(port, port.Kind == PortKind.Intake || job.Drawn.Contains(port) ? FlowDirection.Draw : FlowDirection.Blow);
        }

        if (looks.Evening) mornings.Check("evening");
    }
}
