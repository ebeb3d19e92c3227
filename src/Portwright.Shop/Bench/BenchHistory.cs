using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// The checks of a bench one after another, everything their plates and leak tests read taken together: a change between two of them is in all
/// that came after and in nothing that came before. Readings share what their doubts share: a day's drift, a certificate, a calibration.
/// </summary>
internal sealed class BenchHistory
{
    /// <summary>So many checks to either side of the ones asked about are read with them: further ones were of another bench. Our own choice.</summary>
    public const int Reach = 10;

    /// <summary>Two checks one after the other that tell of a change by themselves, with this chance or more, are of two benches: each has its own history.</summary>
    public const double ToldByTwo = 0.5;

    /// <summary>Standard deviation of a level that nothing is known of, as a share.</summary>
    private const double Unknown = 0.1;

    private readonly GramOfReadings _gram;
    private readonly LeakGrid _grid;

    /// <summary>Of each leak of the grid how likely the tests up to a check, and from it on, would have read as they did. Those of the calibration come first.</summary>
    private readonly double[][] _seenBefore, _seenFrom;

    /// <summary>How much each leak of the grid adds to the flow through a plate of the mean size, as a logarithm.</summary>
    private readonly double[] _flow;

    private readonly bool _calibrated;

    private BenchHistory(
        IReadOnlyList<Morning> checks, IReadOnlyList<(int Check, PlateTotal Plate)> readings, double[] levels, double shared,
        IReadOnlyList<LeakShown> atCalibration, double calibrationHole, Kept<BenchCard> bench)
    {
        var smallest = bench.Fact.Plates.Select(p => p.EffectiveArea).DefaultIfEmpty(1).Min();
        Checks = checks;
        _calibrated = double.IsFinite(calibrationHole);
        _grid = LeakGrid.For(smallest, checks.Select(c => c.Leak).OfType<LeakShown>().Concat(atCalibration).Select(l => l.Area).DefaultIfEmpty(0).Max());
        Hole = readings.Select(r => r.Plate.Certified).DefaultIfEmpty(smallest).Average();
        _flow = [.. _grid.Areas.Select(a => Math.Log(1 + a / Hole))];
        _gram = new GramOfReadings(readings, levels, shared, Hole, Hole / calibrationHole);
        var each = checks.Select(c => Likelihoods(c.Leak is { } l ? [l] : [])).ToArray();
        _seenBefore = new double[checks.Count + 1][];
        _seenBefore[0] = Likelihoods(atCalibration);
        _seenFrom = new double[checks.Count + 1][];
        _seenFrom[checks.Count] = Likelihoods([]);
        for (var i = 0; i < checks.Count; i++)
        {
            _seenBefore[i + 1] = Times(_seenBefore[i], each[i]);
            _seenFrom[checks.Count - 1 - i] = Times(_seenFrom[checks.Count - i], each[checks.Count - 1 - i]);
        }
    }

    private IReadOnlyList<Morning> Checks { get; }

    /// <summary>Mean of the plates read, m2.</summary>
    public double Hole { get; }

    /// <summary>
    /// The checks around one of them that are of the same bench: as far as no two neighbours tell of a change, and no further than <see cref="Reach"/>.
    /// A history holds one change at most; what changed twice is two.
    /// </summary>
    /// <param name="checks">In the order made.</param>
    /// <param name="first">From here backwards.</param>
    /// <param name="last">From here forwards: <paramref name="first"/> itself, or the check after it.</param>
    public static (int First, int Last) Around(IReadOnlyList<Morning> checks, int first, int last, Kept<BenchCard> bench)
    {
        bool IsOneBench(int earlier)
        {
            var (meter, leak) = AmongThemselves([checks[earlier], checks[earlier + 1]], bench).ChangesAmong(bench.Fact)[1];
            return meter + leak < ToldByTwo;
        }

        var (from, to) = (first, last);
        while (from > 0 && first - from < Reach && IsOneBench(from - 1))
        {
            from--;
        }

        while (to + 1 < checks.Count && to - last < Reach && IsOneBench(to))
        {
            to++;
        }

        return (from, to);
    }

    /// <summary>Checks held against each other alone: what a plate reads on a range at all says nothing, only that it reads otherwise than before.</summary>
    public static BenchHistory AmongThemselves(IReadOnlyList<Morning> checks, Kept<BenchCard> bench)
    {
        (int, PlateTotal)[] readings = [.. checks.SelectMany((c, i) => c.Totals.Select(t => (i, t)))];
        return new(checks, readings, [.. readings.Select(_ => Unknown)], 0, [], double.PositiveInfinity, bench);
    }

    /// <summary>Checks held against the calibration of their ranges, or against the certificates where they never were calibrated.</summary>
    /// <param name="of">Plates that speak, with their ranges.</param>
    public static BenchHistory SinceCalibration(IReadOnlyList<Morning> checks, IReadOnlyList<(string Plate, string Range)> of, Kept<BenchCard> bench)
    {
        (int Check, PlateTotal Plate)[] readings = [.. checks.SelectMany((c, i) => c.Totals.Where(t => of.Contains((t.Plate, t.Range))).Select(t => (i, t)))];
        Kept<Calibration>[] from = [.. readings.Select(r => r.Plate.Factor.From).OfType<Kept<Calibration>>().DistinctBy(c => c.Id)];
        double[] holes = [.. from.SelectMany(c => c.Fact.Readings).Select(r => bench.Fact.Plates.FirstOrDefault(p => p.Name.Equals(r.Plate, StringComparison.OrdinalIgnoreCase))?.EffectiveArea).OfType<double>()];
        LeakShown[] tests = [.. from.Where(c => c.Fact.Leak is not null).Select(c => PlateArea.Leak(c.Fact.Leak!, c.Fact.Air, bench, Estimate.Exact(1)))];
        // The factor carries the drift of the day it was found on, unless that is the day of the check itself.
        var anotherDay = from.Any(c => checks.All(m => m.When.Day != c.Fact.Date));
        return new(checks, readings, [], anotherDay ? bench.Fact.Doubt.Drift : 0, tests, holes.Length > 0 ? holes.Average() : double.PositiveInfinity, bench);
    }

    /// <summary>Chances that the meter moved, and that the leak changed, before each check but the first, by more than what matters between the two.</summary>
    public (double Meter, double Leak)[] ChangesAmong(BenchCard card)
    {
        // Within one day a bench does not drift by its card; from one day to another it does, each day by itself.
        double Matters(int check) => BenchShift.Matters(card.Doubt, Checks[check].When.Day == Checks[check - 1].When.Day ? 1 : 2);
        return Changes(fromFirst: false, Matters, 0, BenchMorning.LeakWorthALook * _grid.Plate);
    }

    /// <summary>Chances that the meter moved, and that the leak changed, just before each check, by more than what matters. Before the first there is only a calibration.</summary>
    /// <param name="matters">Of the meter just before a check, as a share.</param>
    /// <param name="leakSeen">Change of the leak that is known and taken off, m2: none of it counts.</param>
    /// <param name="leakMatters">m2.</param>
    /// <param name="fromFirst">False: nothing is asked of the time before the first check.</param>
    public (double Meter, double Leak)[] Changes(bool fromFirst, Func<int, double> matters, double leakSeen, double leakMatters)
    {
        var first = fromFirst ? 0 : 1;
        var sound = _grid.Sound();
        double[] seen = Times(_seenBefore[^1], sound);
        // Only ratios of likelihoods count: all are over about the largest.
        var least = Enumerable.Range(first, Checks.Count - first).Select(_gram.StepBefore).SelectMany(s => _flow.Select(f => s.Moved(f, BenchShift.MovedBy).Distance)).Concat(_flow.Select(_gram.Sound)).Min();
        var none = 0.0;
        for (var i = 0; i < seen.Length; i++)
        {
            none += seen[i] * _gram.Likelihood(_gram.Sound(_flow[i]), least);
        }

        // Each change is as likely as any other, and which of the two it was is even, before anything is read.
        var odds = 1 / (BenchShift.ChecksToAMove - 1);
        var found = new (double Meter, double MeterBeyond, double Leak, double LeakBeyond)[Checks.Count];
        for (var check = first; check < Checks.Count; check++)
        {
            var (meter, beyond) = Meter(check, seen, least, matters(check));
            // A certificate leaks nothing: before the first check no leak can have changed.
            var (leak, leakBeyond) = check > 0 || _calibrated ? Leak(check, sound, least, leakSeen, leakMatters) : (0, 0);
            found[check] = (meter, beyond, leak, leakBeyond);
        }

        var all = none + odds / 2 * found.Sum(f => f.Meter + f.Leak);
        return [.. found.Select(f => all > 0 ? (odds / 2 * f.MeterBeyond / all, odds / 2 * f.LeakBeyond / all) : (0, 0))];
    }

    private (double All, double Beyond) Meter(int check, double[] seen, double least, double matters)
    {
        double all = 0, beyond = 0;
        var step = _gram.StepBefore(check);
        for (var i = 0; i < seen.Length; i++)
        {
            if (seen[i] > 0)
            {
                var (q, shrink, mean, spread) = step.Moved(_flow[i], BenchShift.MovedBy);
                var of = seen[i] * shrink * _gram.Likelihood(q, least);
                all += of;
                beyond += of * BenchShift.Beyond(mean, spread, matters);
            }
        }

        return (all, beyond);
    }

    private (double All, double Beyond) Leak(int check, double[] sound, double least, double seen, double matters)
    {
        double all = 0, beyond = 0;
        var (before, from, step) = (_seenBefore[check], _seenFrom[check], _gram.StepBefore(check));
        for (var i = 0; i < sound.Length; i++)
        {
            var was = sound[i] * before[i];
            if (was < Negligible)
            {
                continue;
            }

            var changed = _grid.Changed(i);
            for (var j = 0; j < changed.Length; j++)
            {
                if (changed[j] * from[j] < Negligible)
                {
                    continue;
                }

                var of = was * changed[j] * from[j] * _gram.Likelihood(step.Leaked(_flow[i], _flow[j]), least);
                all += of;
                beyond += Math.Abs(_grid.Areas[j] - _grid.Areas[i] - seen) > matters ? of : 0;
            }
        }

        return (all, beyond);
    }

    /// <summary>A leak less likely than this from its tests alone is not looked at.</summary>
    private const double Negligible = 1e-30;

    /// <summary>Each test's over its largest, so that many of them leave something.</summary>
    private double[] Likelihoods(IReadOnlyList<LeakShown> tests) => tests.Select(t =>
    {
        double[] each = [.. _grid.Areas.Select(t.Likelihood)];
        var largest = each.Max();
        return largest > 0 ? [.. each.Select(l => l / largest)] : each;
    }).Aggregate(_grid.Areas.Select(_ => 1.0).ToArray(), Times);

    private static double[] Times(double[] one, double[] two) => [.. one.Select((x, i) => x * two[i])];
}
