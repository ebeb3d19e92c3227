using Portwright.Judging.Faults;
using Portwright.Judging.Trial;

namespace Portwright.Shop.Tests.Judging;

/// <summary>How often the program is wrong about ports, on made shops it does not know. The limits are what is wanted, not what is; the whole trial is <c>bench/Portwright.Judging</c>.</summary>
public sealed class JudgementTests(JudgementTests.Trial trial) : IClassFixture<JudgementTests.Trial>
{
    [Fact]
    public void Of_a_hundred_healthy_jobs_five_at_most_carry_a_false_finding_said_with_nine_in_ten()
    {
        var wrong = trial.Run.Healthy.Count(t => t.AnyFalse(0.9));
        Assert.True(wrong <= Allowance.Of(trial.Run.Healthy.Count, 0.05), $"{wrong} of {trial.Run.Healthy.Count}: {Worst(0.9)}");
    }

    [Fact]
    public void Of_a_hundred_healthy_jobs_one_at_most_carries_a_false_finding_as_good_as_certain()
    {
        var wrong = trial.Run.Healthy.Count(t => t.AnyFalse(0.995));
        Assert.True(wrong <= Allowance.Of(trial.Run.Healthy.Count, 0.01), $"{wrong} of {trial.Run.Healthy.Count}: {Worst(0.995)}");
    }

    /// <summary>Faults that the readings of a usual shop show; what the others would take is on the page of rates (docs/theory/judgement.md).</summary>
    private static readonly string[] Shown =
    [
        "flow falls off at high lift", "throat too small for its valve", "throat too large for its valve", "bowl too large", "thin wall", "wake behind the guide boss",
        "air torn off the short side", "ring does not close: probe", "burette against sections", "two lifts swapped",
    ];

    [Theory]
    [InlineData(Size.Large, 0.05)]
    [InlineData(Size.Middle, 0.30)]
    public void Of_a_hundred_faults_the_readings_show_so_many_at_most_are_missed(Size size, double share)
    {
        var of = trial.Run.Faulty.Where(t => t.Size == size && Shown.Contains(t.Fault!.Name)).ToList();
        Assert.NotEmpty(of);
        var missed = of.Where(t => !t.Found(0.9)).ToList();
        Assert.True(missed.Count <= Allowance.Of(of.Count, share), $"{missed.Count} of {of.Count}: {Most(missed.Select(t => t.Fault!.Name))}");
    }

    [Fact]
    public void No_kind_of_large_fault_is_missed_more_often_than_found() => Assert.Empty(
        from t in trial.Run.Faulty
        where t.Size == Size.Large && Shown.Contains(t.Fault!.Name)
        group t by t.Fault!.Name into fault
        where fault.Count(t => t.Found(0.9)) * 2 < fault.Count()
        select fault.Key);

    [Fact]
    public void What_is_said_with_nine_in_ten_is_so_nine_times_in_ten()
    {
        var said = Rates.Of(trial.Run).Calibration.Where(c => c.From >= 0.9).ToList();
        var (so, of) = (said.Sum(c => c.Of > 0 ? c.Share * c.Of : 0), said.Sum(c => c.Of));
        Assert.True(of - so <= Allowance.Of(of, 0.10), $"{so:F0} of {of} were so");
    }

    [Fact]
    public void The_program_answers_on_every_made_shop() =>
        Assert.Empty(trial.Run.Healthy.Concat(trial.Run.Faulty).Where(t => t.Broke is not null).Select(t => $"shop {t.Number}: {t.Broke}"));

    private string Worst(double above) =>
        Most(trial.Run.Healthy.SelectMany(t => t.Said).Where(s => s.Became == Became.False && s.Chance > above).Select(s => s.Key));

    private static string Most(IEnumerable<string> of) =>
        string.Join(", ", of.GroupBy(n => n).OrderByDescending(g => g.Count()).Take(8).Select(g => $"{g.Count()} {g.Key}"));

    /// <summary>Fifty healthy jobs, and three of each fault at two sizes.</summary>
    public sealed class Trial
    {
        public Run Run { get; } = Run.Of(new Extent(Seed: 21, Heads: 50, Faults: 3, Sizes: [Size.Middle, Size.Large]));
    }
}
