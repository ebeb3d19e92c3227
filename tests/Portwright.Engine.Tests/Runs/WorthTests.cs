using System.Collections.Concurrent;
using Portwright.Engine.Runs;

namespace Portwright.Engine.Tests.Runs;

public sealed class WorthTests(ITestOutputHelper output)
{
    private static readonly SpeedRange Range = SpeedRange.Even(4000 / 60.0, 6500 / 60.0, 3);

    [Fact]
    public void Slopes_foretell_what_whole_runs_of_changed_ports_give_within_two_percent()
    {
        var design = MadeEngines.Street();
        var worth = WorthCurve.From(design, Range, new EngineBatch().Run(WorthCurve.Tasks(design, Range)));
        double Torque(EngineDesign d) => Range.Mean([.. new EngineBatch().Run([.. Range.Tasks(d, WorthCurve.Close)]).Select(p => p.Torque)]);
        EngineDesign In(Func<double, double> by) => design with { Intake = design.Intake with { Areas = design.Intake.Areas.Scaled(by) } };
        EngineDesign Ex(Func<double, double> by) => design with { Exhaust = design.Exhaust with { Areas = design.Exhaust.Areas.Scaled(by) } };
        EngineDesign Pipe(double by) => design with { Intake = design.Intake with { Tract = design.Intake.Tract with { Stations = [.. design.Intake.Tract.Stations.Select(s => s with { Area = s.Area * by })] } } };

        void Check(string what, Func<double, EngineDesign> changed, double slope)
        {
            // Both ways, three times the nudge of the slopes: whole bands of lift at once.
            var real = (Torque(changed(Math.Exp(0.03))) - Torque(changed(Math.Exp(-0.03)))) / 0.06;
            output.WriteLine($"{what}: {slope:0.0000} foretold, {real:0.0000} run");
            Assert.Equal(real, slope, 0.02 * Math.Abs(real));
        }

        Check("intake above 7 mm", s => In(l => l > 7e-3 ? s : 1), worth.Intake.Where(w => w.Lift > 7e-3).Sum(w => w.Torque));
        Check("whole intake", s => In(_ => s), worth.Intake.Sum(w => w.Torque));
        Check("intake at 12 mm", s => In(l => Math.Abs(l - 12e-3) < 1e-6 ? s : 1), worth.Intake.Single(w => Math.Abs(w.Lift - 12e-3) < 1e-6).Torque);
        Check("exhaust below 5 mm", s => Ex(l => l < 5e-3 ? s : 1), worth.Exhaust.Where(w => w.Lift < 5e-3).Sum(w => w.Torque));
        Check("intake pipe", Pipe, worth.IntakeSections.Sum(w => w.Torque));
    }

    [Fact]
    public void A_point_is_the_same_alone_and_in_company_and_kept_points_are_not_run_again()
    {
        var design = MadeEngines.Street();
        var alone = EngineRun.At(design, 75);
        var kept = new KeptHere();
        EngineTask[] tasks = [.. Range.Tasks(design, Settling.Usual), new(design, 75, Settling.Usual), .. Range.Tasks(MadeEngines.Street(runner: 0.3), Settling.Usual)];
        var together = new EngineBatch { AtATime = 2, Kept = kept }.Run(tasks);
        Assert.Equal(alone, together[3]);

        var known = 0;
        var again = new EngineBatch { Kept = kept, Progress = p => known = Math.Max(known, p.Kept) }.Run(tasks);
        Assert.Equal(tasks.Length, known);
        Assert.Equal(together, again);
        // Another cam is another engine.
        Assert.NotEqual(tasks[0].Key(), (tasks[0] with { Design = design with { Intake = design.Intake with { Timing = design.Intake.Timing with { Later = 0.001 } } } }).Key());
    }

    [Fact]
    public void A_study_stopped_half_way_goes_on_where_it_stopped()
    {
        var study = new Study(MadeEngines.Street(), SpeedRange.Even(50, 90, 2), [new(StudyAxis.IntakeLength, [-0.1, 0, 0.1]), new(StudyAxis.IntakeLater, [0, 0.1])]);
        Assert.Equal(6, study.Count);
        var kept = new KeptHere();
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => new EngineBatch { AtATime = 1, Kept = kept, Cancel = stop.Token, Progress = p => { if (p.Done == 5) stop.Cancel(); } }.Run(study.Tasks()));
        Assert.Equal(5, kept.Count);
        var first = -1;
        Assert.Null(EngineBatch.FromKept(study.Tasks(), kept));
        var results = study.From(new EngineBatch { AtATime = 1, Kept = kept, Progress = p => first = first < 0 ? p.Kept : first }.Run(study.Tasks()));
        Assert.Equal(1, first);
        Assert.Equal(12, kept.Count);
        Assert.Equal([0.1, 0.1], results[^1].Values);
        Assert.Equal(study.From(new EngineBatch().Run(study.Tasks())).Select(r => r.Torque), results.Select(r => r.Torque));
        Assert.NotNull(EngineBatch.FromKept(study.Tasks(), kept));
    }

    [Fact]
    public void A_larger_valve_of_the_same_form_flows_by_its_square_at_lifts_by_its_size()
    {
        var study = new Study(MadeEngines.Street(), Range, [new(StudyAxis.IntakeValve, [1.02])]);
        var (was, now) = (study.Design.Intake.Areas, study.Variant([1.02]).Intake.Areas);
        Assert.Equal(was.WithTheStream[4] * 1.02 * 1.02, now.WithTheStream[4], 1e-15);
        Assert.Equal(was.Lifts[4] * 1.02, now.Lifts[4], 1e-15);
    }

    private sealed class KeptHere : IKeptPoints
    {
        private readonly ConcurrentDictionary<string, OperatingPoint> _points = new();

        public int Count => _points.Count;

        public OperatingPoint? Find(string key) => _points.GetValueOrDefault(key);

        public void Keep(string key, OperatingPoint point) => _points[key] = point;
    }
}
