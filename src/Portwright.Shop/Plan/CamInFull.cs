using Portwright.Engine.Cam;
using Portwright.Physics.Targets;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>One side's valve over the whole cycle.</summary>
/// <param name="Lift">The curve the engine run and the targets use.</param>
/// <param name="Card">What it was made from; null where a lift table was.</param>
/// <param name="Figures">Of the card, stated and assumed.</param>
public sealed record CamInFull(ValveLift Lift, CamCard? Card, IReadOnlyList<PlanFigure> Figures)
{
    /// <summary>The table the curve was made from; empty where a card was.</summary>
    public IReadOnlyList<LiftAtAngle> Table { get; init; } = [];

    /// <summary>Highest lift, stated or assumed.</summary>
    public PlanFigure Highest => Figures[0];

    /// <summary>Figures of lift and time that nobody stated: with one of two durations the flanks are assumed, and <see cref="Flanks"/> says how much hangs on it.</summary>
    public IReadOnlyList<PlanFigure> NotStated { get; init; } = [];

    /// <summary>The same cam with flanks as slow and as steep as they may be; empty where the plan states them.</summary>
    public IReadOnlyList<ValveLift> Flanks { get; init; } = [];

    private const double Degree = Math.PI / 180;

    /// <summary>What stands in where a card is silent, rad. All common practice, no source.</summary>
    internal const double UsualAt050 = 224 * Degree, SeatBeyond050 = 52 * Degree, UsualIntakeCentre = 108 * Degree, UsualExhaustCentre = 112 * Degree;

    /// <summary>Lift over valve diameter where no cam is given: there the curtain is as large as the valve's head.</summary>
    internal static double UsualLift => NamedLimits.CurtainEqualsHead.Limits.Middle;

    /// <summary>How far off the 52 degrees between seat and .050 may be, rad; judgement, no source.</summary>
    internal const double FlankSpread = 10 * Degree;

    /// <summary>How far lobe and table may differ in highest lift, m.</summary>
    private const double SameLift = 0.00025;

    /// <summary>The curve, or null with the reason among the problems.</summary>
    internal static CamInFull? Of(EnginePlan plan, PortKind kind, double valveDiameter, List<PlanProblem> problems)
    {
        var side = kind == PortKind.Intake ? "Intake" : "Exhaust";
        var timing = plan.TimingOf(kind) ?? new CamTiming();
        var cam = plan.CamOf(kind);
        return timing.Table is { Count: > 0 } table
            ? FromTable(table, cam, kind, $"{side} lift table", problems)
            : FromCard(timing, cam, kind, side, valveDiameter, problems);
    }

    private static CamInFull? FromTable(IReadOnlyList<LiftAtAngle> table, CamLift? cam, PortKind kind, string field, List<PlanProblem> problems)
    {
        var lift = ValveLift.FromTable([.. table.Select(r => r.Crank)], [.. table.Select(r => r.Lift)], out var problem);
        if (lift is null)
        {
            problems.Add(new(field, $"{field}: {problem}"));
            return null;
        }

        if (cam is not null && Math.Abs(cam.NetLift() - lift.Highest) > SameLift)
        {
            problems.Add(new(field, $"{field}: it lifts the valve {Quantity.Lift(lift.Highest)}, lobe, ratio and lash {Quantity.Lift(cam.NetLift())}. Correct one, or empty the lobe's boxes."));
        }

        // Counted over the whole cycle, an exhaust's nose may stand at 610 degrees as well as at -110.
        var nose = Math.IEEERemainder(lift.HighestAt, 4 * Math.PI);
        if (kind == PortKind.Intake ? nose < 0 : nose > 0)
        {
            problems.Add(new(field, $"{field}: the valve is highest {Math.Abs(nose) / Degree:0} degrees {(nose < 0 ? "before" : "after")} top {Term.DeadCentre} of gas exchange, where the other side's valve would be. Count the angles from that top {Term.DeadCentre}, the exhaust's below zero."));
        }

        return new CamInFull(lift, null, [new PlanFigure(field, lift.Highest, Dimension.Lift)]) { Table = table };
    }

    private static CamInFull? FromCard(CamTiming timing, CamLift? cam, PortKind kind, string side, double valveDiameter, List<PlanProblem> problems)
    {
        var (seat, at050) = (timing.SeatDuration, timing.DurationAt050);
        PlanFigure Angle(string name, double? stated, double assumed, Sentence why) => PlanFigure.Of($"{side} {name}", stated, Dimension.Angle, assumed, why);
        var lobe = PlanFigure.Of($"{side} lobe lift", cam?.LobeLift, Dimension.Lift, UsualLift * valveDiameter,
            $"no cam given: the valve lifts a quarter of its diameter, {Quantity.Length(valveDiameter)}, common practice");
        var checking = Angle("duration at .050", at050, seat - SeatBeyond050 ?? UsualAt050, seat is null
            ? (Sentence)$"no duration given: 224 degrees, common practice for a fast road engine"
            : $"not given: seat duration less 52 degrees, common practice");
        var whole = Angle("seat duration", seat, checking.Value + SeatBeyond050, $"not given: duration at .050 and 52 degrees, common practice");
        var counted = PlanFigure.Of($"{side} seat lift", timing.SeatLift, Dimension.Lift, CamCard.UsualSeatLift, $"not given: counted at {Quantity.Length(CamCard.UsualSeatLift)}, as many cards do, common practice");
        var centre = Angle("lobe centre", timing.LobeCentre, kind == PortKind.Intake ? UsualIntakeCentre : UsualExhaustCentre,
            $"not given: {(kind == PortKind.Intake ? "108 degrees after" : "112 degrees before")} top {Term.DeadCentre}, common practice");
        var card = new CamCard(lobe.Value, whole.Value, checking.Value, centre.Value)
        {
            SeatLift = counted.Value,
            RockerRatio = cam?.RockerRatio ?? 1,
            Lash = cam?.Lash ?? 0,
            Further = timing.DurationAt200 is { } at200 ? [new LobeDuration(0.00508, at200)] : [],
        };
        string? problem;
        var lift = kind == PortKind.Intake ? ValveLift.OfIntake(card, out problem) : ValveLift.OfExhaust(card, out problem);
        if (lift is null)
        {
            problems.Add(new($"{side} cam", $"{side} cam: {problem}"));
            return null;
        }

        ValveLift?[] flanks = checking.IsAssumed || whole.IsAssumed ? [Flank(-FlankSpread), Flank(FlankSpread)] : [];
        return new CamInFull(lift, card, [lobe, whole, counted, checking, centre])
        {
            NotStated = [.. lobe.IsAssumed ? [lobe] : Array.Empty<PlanFigure>(), .. checking.IsAssumed && whole.IsAssumed ? [whole] : Array.Empty<PlanFigure>()],
            Flanks = [.. flanks.OfType<ValveLift>()],
        };

        ValveLift? Flank(double longer)
        {
            // What the plan states stands; the other duration moves.
            var moved = checking.IsAssumed ? card with { DurationAt050 = card.DurationAt050 - longer } : card with { SeatDuration = card.SeatDuration + longer };
            return kind == PortKind.Intake ? ValveLift.OfIntake(moved, out _) : ValveLift.OfExhaust(moved, out _);
        }
    }
}
