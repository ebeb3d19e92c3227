using Portwright.Physics.TestPiece;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Web.Forms;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Air;

/// <summary>How the bench stands while a ball or a probe is held in the port, read off a form.</summary>
internal static class BenchSettingForm
{
    /// <summary>Null where a field could not be taken; the form says which.</summary>
    public static BenchSetting? Read(Typing typed, Kept<BenchCard> bench, PortSurvey survey, Surroundings around)
    {
        var lift = typed.Needed("lift", EnteredPort.Lift, around);
        var pressure = typed.Needed("pressure", EnteredRoom.TestPressure, around);
        if (pressure is { Value: <= 0 })
        {
            typed.Refuse("pressure", "The test pressure must be above zero. Type it as 28 inH2O.");
        }

        return typed.IsGood
            ? new BenchSetting(bench.Id, DirectionOf(survey), lift!, pressure!, bench.Fact.RangeNamed(typed.Raw("range") ?? "")?.Name ?? RangeOf(survey, bench))
            : null;
    }

    /// <summary>As the port was swept last; else intakes drawn and exhausts blown.</summary>
    public static FlowDirection DirectionOf(PortSurvey survey) => survey.Sheet.Flow?.Curve.Direction
        ?? (survey.Sheet.Port.Fact.Kind == PortKind.Intake ? FlowDirection.Draw : FlowDirection.Blow);

    /// <summary>The range the port's last sweep ended on.</summary>
    public static string RangeOf(PortSurvey survey, Kept<BenchCard> bench)
    {
        var last = survey.Sheet.Flow?.Sweeps[^1];
        var read = last?.Curve.Points[^1].Readings[^1].Reading.Fact.Range;
        // The card may have lost the range since.
        return bench.Fact.RangeNamed(read is { Length: > 0 } ? read : last?.Sweep.Fact.Range ?? "")?.Name ?? bench.Fact.Ranges[0].Name;
    }

    public static string LiftShown(PortSurvey survey, UnitSystem units) =>
        Print.Bare(survey.LiftThatCounts ?? SweepDefaults.Lifts(units).Last(), Dimension.Lift, units);

    public static string PressureShown(PortSurvey survey, UnitSystem units) =>
        Print.Bare(survey.Sheet.Bench?.Fact.RestatedAt ?? SweepDefaults.TestPressure, Dimension.Pressure, units, units == UnitSystem.Si ? 2 : 1);
}
