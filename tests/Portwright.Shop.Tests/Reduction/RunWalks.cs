using CsCheck;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Reduction;

/// <summary>A test is a run: which setting is next, whatever was read, taken back or read besides.</summary>
public sealed class RunWalks
{
    private static readonly Guid Sweep = Guid.CreateVersion7();

    private static readonly Typed[] Three = Lifts(.1, .2, .3);

    [Fact]
    public void The_lift_where_the_valve_turns_round_is_read_once() =>
        Says("1:.1 1:.2 1:.3 2:.2 2:.1 3:.2 3:.3", TestRun.Of(Three, PassPattern.UpDownUp, []));

    [Fact]
    public void Up_and_up_again_begins_at_the_first_lift() => Says("1:.1 1:.2 1:.3 2:.1 2:.2 2:.3", TestRun.Of(Three, PassPattern.UpAndUp, []));

    [Fact]
    public void Lifts_at_another_pressure_come_last_and_are_passes_of_their_own() =>
        Says("1:.1 1:.2 1:.3 2:.2 2:.1 3:.1@15 3:.3@15 4:.3@40", TestRun.Of(Three, PassPattern.UpAndDown, [new(Lifts(.1, .3), Inches(15)), new(Lifts(.3), Inches(40))]));

    [Theory]
    [InlineData("1:.1 1:.2 1:.3 2:.2 2:.1", .1, .2, .3, .2, .1)]
    [InlineData("1:.1 1:.2 1:.3 2:.1 2:.2 2:.3", .1, .2, .3, .1, .2, .3)]
    [InlineData("1:.1 1:.2 2:.2 2:.1", .1, .2, .2, .1)]
    [InlineData("1:.3 1:.1 1:.2", .3, .1, .2)] // No lift again: one pass, whatever the order.
    [InlineData("1:.1 2:.1", .1, .1)]
    public void A_list_of_old_holds_its_passes(string run, params double[] lifts) => Says(run, TestRun.Of(Lifts(lifts)));

    [Fact]
    public void A_pass_opens_or_closes_by_its_lifts()
    {
        var run = TestRun.Of(Lifts(.1, .2), PassPattern.UpDownUp, [new(Lifts(.1), Inches(15))]);
        Assert.Equal([PassWay.Opening, PassWay.Opening, PassWay.Closing, PassWay.Opening, PassWay.Closing], run.Steps.Select(run.WayOf));
        Assert.Equal((3, 2), (run.Passes, run.PlaceOf(run.Steps[2])));
    }

    [Fact]
    public void A_run_of_each_lift_once_is_written_as_it_always_was()
    {
        var plain = TestRun.Of(Three).On(Plain());
        Assert.Null(plain.Steps);
        Assert.Equal(Three, plain.Lifts);
        var again = TestRun.Of(Three, PassPattern.UpAndDown, []).On(plain);
        Assert.Equal((3, 5), (again.Lifts.Count, again.Steps!.Count));
        Assert.Null(TestRun.Of(Three).On(again).Steps);
    }

    [Fact]
    public void Readings_without_a_pass_fill_the_steps_in_order()
    {
        var steps = TestRun.Of(Lifts(.1, .2, .3, .2, .1)).Steps;
        Assert.Equal([0, 1, 2, 3, 4], Places(steps, Read(.1), Read(.2), Read(.3), Read(.2), Read(.1)));
        // Read again before anything else was asked for: the step just read.
        Assert.Equal([0, 1, 1, 2, 3], Places(steps, Read(.1), Read(.2), Read(.2), Read(.3), Read(.2)));
        // Where the next step is the same lift it is that.
        Assert.Equal([0, 1, 2], Places(TestRun.Of(Lifts(.1, .2, .2, .1)).Steps, Read(.1), Read(.2), Read(.2)));
        // Nothing left to read at that lift: one more of its last.
        Assert.Equal([0, 1, 0], Places(TestRun.Of(Three).Steps, Read(.1), Read(.2), Read(.1)));
        Assert.Equal([null, 0], Places(steps, Read(.4), Read(.1)));
    }

    [Fact]
    public void Only_a_reading_with_its_own_pressure_fills_a_step_that_asks_for_one()
    {
        var steps = TestRun.Of(Lifts(.1, .2), PassPattern.AsListed, [new(Lifts(.1), Inches(15))]).Steps;
        Assert.Equal([0, 1, 0], Places(steps, Read(.1), Read(.2), Read(.1)));
        Assert.Equal([0, 1, 2], Places(steps, Read(.1), Read(.2), Read(.1) with { TestPressure = Inches(15) }));
        Assert.Equal([null], Places([steps[2]], Read(.1)));
    }

    [Fact]
    public void A_pass_that_is_stated_counts_before_the_order_and_one_the_run_does_not_know_goes_by_it()
    {
        var steps = TestRun.Of(Three, PassPattern.UpAndDown, []).Steps;
        Assert.Equal([4, 1, 1], Places(steps, Read(.1, 2), Read(.2, 1), Read(.2, 1)));
        Assert.Equal([0], Places(steps, Read(.1, 7)));
    }

    /// <summary>Any hand: reads what is asked, reads it again, jumps to another step, reads a lift nobody asked for, takes the last back, puts it back.</summary>
    [Fact]
    public void Whatever_the_hand_does_the_next_step_is_the_first_that_has_no_reading() => Gen.Select(Runs, Gen.Int[0, 9].Array[0, 60]).Sample((run, hands) =>
    {
        var book = new List<(FlowReading Reading, int? Step)>();
        (FlowReading, int?)? back = null;
        var random = 0;
        foreach (var hand in hands)
        {
            random = random * 31 + hand + 7;
            var open = Enumerable.Range(0, run.Steps.Count).Where(i => book.All(b => b.Step != i)).Cast<int?>().FirstOrDefault();
            var last = book.LastOrDefault(b => b.Step is not null).Step;
            switch (hand)
            {
                case <= 4 when open is { } next: Reads(next); break;
                case 5 or 6 when last is { } again && book.Count > 0: Reads(again); break;
                case 7: Reads(Math.Abs(random) % run.Steps.Count); break;
                case 8: book.Add((Read(.95), null)); break;
                case 9 when back is { } put: book.Add(put); back = null; break;
                default:
                    if (book.Count == 0) break;
                    back = book[^1];
                    book.RemoveAt(book.Count - 1);
                    break;
            }

            var places = RunWalk.Places(run.Steps, [.. book.Select(b => b.Reading)]);
            Assert.Equal(book.Select(b => b.Step), places);
        }

        void Reads(int step) => book.Add((Read(run.Steps[step].Lift.Value, run.Steps[step].Pass), step));
    });

    /// <summary>The same without anybody saying the pass: read in order, each again as often as one likes, none is doubled and none lost.</summary>
    [Fact]
    public void Read_in_order_with_repeats_between_every_step_gets_its_own() => Gen.Select(Runs, Gen.Int[0, 2].Array[80]).Sample((run, repeats) =>
    {
        var book = new List<(FlowReading Reading, int Step)>();
        for (var i = 0; i < run.Steps.Count; i++)
        {
            var same = i + 1 < run.Steps.Count && run.Steps[i + 1].Lift.Value == run.Steps[i].Lift.Value;
            for (var n = 0; n <= (same ? 0 : repeats[i % 80]); n++) book.Add((Read(run.Steps[i].Lift.Value) with { TestPressure = run.Steps[i].TestPressure }, i));
        }

        Assert.Equal(book.Select(b => (int?)b.Step), RunWalk.Places(run.Steps, [.. book.Select(b => b.Reading)]));
    });

    /// <summary>From the record: a reading taken back opens its step again, put back it fills it.</summary>
    [Fact]
    public void A_reading_taken_back_opens_its_step()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[0]);
        var cut = bench.Cut(0);
        var sweep = bench.Add(TestRun.Of(Three, PassPattern.UpAndDown, []).On(Plain()) with { Cut = cut, Bench = bench.BenchId, Range = bench.Range.Name });
        foreach (var (lift, pass) in new[] { (.1, 1), (.2, 1), (.3, 1), (.2, 2) }) bench.Add(Read(lift, pass) with { Sweep = sweep });
        Assert.Equal((.1, 2), Next());
        var last = bench.Ledger.ReadingsOf(sweep)[^1];
        bench.Put(Amend.Hide(last, SimulatedBench.Morning.AddHours(2), "", "taken back"));
        Assert.Equal((.2, 2), Next());
        bench.Put(Amend.Show(last, SimulatedBench.Morning.AddHours(3), "", "put back"));
        bench.Add(Read(.1, 2) with { Sweep = sweep });
        bench.Add(Read(.95) with { Sweep = sweep });
        var walk = RunWalk.Of(bench.Ledger, bench.Ledger.Get<Sweep>(sweep));
        Assert.Null(walk.Next);
        Assert.Equal((5, 6, 1), (walk.Steps.Count, walk.Readings.Count, walk.Outside.Count));

        (double, int)? Next() => RunWalk.Of(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Next is { } next ? (next.Lift.Value, next.Pass) : null;
    }

    internal static readonly Gen<TestRun> Runs = Gen.Select(Gen.Int[1, 12].Array[1, 9], Gen.Enum<PassPattern>(), Gen.Int[1, 12].Array[0, 3], Gen.Bool, (lifts, pattern, again, listed) =>
    {
        Typed[] of = Lifts([.. (listed && pattern == PassPattern.AsListed ? lifts : lifts.Distinct().Order().ToArray()).Select(l => l * .05)]);
        return TestRun.Of(of, of.Length < 2 ? PassPattern.AsListed : pattern, again.Length == 0 ? [] : [new(Lifts([.. again.Distinct().Select(l => l * .05)]), Inches(15))]);
    });

    internal static Typed[] Lifts(params double[] lifts) => [.. lifts.Select(l => Typed.Of(Math.Round(l, 3), "in"))];

    internal static Typed Inches(double water) => Typed.Of(water, "inH2O");

    internal static Sweep Plain() => new(Guid.NewGuid(), Guid.NewGuid(), Physics.TestPiece.FlowDirection.Draw, "large", Inches(28), []);

    private static FlowReading Read(double lift, int? pass = null) => new(Sweep, Lifts(lift)[0], Typed.Of(10, "%"), Pass: pass);

    private static IReadOnlyList<int?> Places(IReadOnlyList<RunStep> steps, params FlowReading[] readings) => RunWalk.Places(steps, readings);

    private static void Says(string run, TestRun made) => Assert.Equal(run, string.Join(' ', made.Steps.Select(s =>
        FormattableString.Invariant($"{s.Pass}:{s.Lift.Value:.0}{(s.TestPressure is { } p ? FormattableString.Invariant($"@{p.Value}") : "")}"))));
}
