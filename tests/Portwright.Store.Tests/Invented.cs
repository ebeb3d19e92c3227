using Portwright.Shop.Record;

namespace Portwright.Store.Tests;

/// <summary>Entries of an invented shop.</summary>
internal static class Invented
{
    private static readonly DateTimeOffset Morning = new(2026, 3, 2, 8, 15, 0, TimeSpan.FromHours(2));

    public static Entry Job(string name = "Two four-valve heads", Guid? id = null)
    {
        var job = id ?? Guid.CreateVersion7();
        return Entry.About(job, job, new Job(name, "A customer", new EnginePlan()), Morning, "J.");
    }

    public static Entry Cut(Guid job, int number, string done = "bowl blended") =>
        Entry.About(Guid.CreateVersion7(), job, new Cut(job, number, done, new DateOnly(2026, 3, 2)), Morning.AddMinutes(number), "J.");

    public static Entry Correction(Entry of, string done) => new(
        Guid.CreateVersion7(), of.Subject, of.Job, Morning.AddHours(1), "J.", "typed",
        new Cut(Guid.Empty, 1, done, new DateOnly(2026, 3, 2)), of.Number, "wrong line of the notes");

    public static Entry ShopNote(string name = "A head kept for comparison") =>
        Entry.About(Guid.CreateVersion7(), null, new Head(name), Morning);

    public static Entry Hide(Entry of) =>
        new(Guid.CreateVersion7(), of.Subject, of.Job, Morning.AddHours(2), "J.", "typed", new Hidden(), of.Number, "typed twice");

    /// <summary>A picture of no more than a beginning that says what it is.</summary>
    public static byte[] Jpeg(int size = 400)
    {
        var bytes = new byte[size];
        new Random(size).NextBytes(bytes);
        bytes[0] = 0xFF;
        bytes[1] = 0xD8;
        bytes[2] = 0xFF;
        return bytes;
    }
}
