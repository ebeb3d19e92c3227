using Portwright.Physics.Crank;
using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>Sections, throat and volume.</summary>
internal static class SectionTargets
{
    public static IEnumerable<EngineTarget> Of(PlanInFull plan, PortSurvey survey)
    {
        var intake = survey.Sheet.Port.Fact.Kind == PortKind.Intake;
        var stations = survey.Stations.Where(s => s.Section is not null).ToList();
        if (survey.AreaWanted is { } band)
        {
            foreach (var station in stations)
            {
                yield return new(SectionSpeed.Rule, $"Section {station.Name}", Dimension.Area, new(band.Least, band.Most), station.Section!.Area,
                    survey.DemandSpeedIn(station.Section) is { } speed ? (Sentence)$"Air at {Quantity.Speed(speed)} on the mean." : Sentence.Empty);
            }
        }

        if (intake)
        {
            foreach (var station in stations)
            {
                yield return new(SectionSpeed.LimitRule, $"{station.Name} becomes the limit at", Dimension.RotationalSpeed, TargetRange.AtLeast(plan.HighestSpeed.Value),
                    Limit(plan, station.Section!.Area.Scale(survey.Intakes)), $"")
                {
                    Assumed = plan.HighestSpeed.IsAssumed ? [plan.HighestSpeed] : [],
                };
            }
        }

        if (Findings.ThroatShare.Of(survey) is { } throat)
        {
            yield return new(Physics.Targets.ThroatShare.Rule, $"Throat over valve, by diameter", Dimension.Fraction, TargetRange.Of(NamedLimits.ThroatOverValve), throat.Share,
                throat.Station is null ? (Sentence)$"By the diameter written down." : $"By the section measured at {throat.Station.Letter}.");
        }

        if (survey is { AreaWanted: { } wanted, CentrelineIsOwn: true } && survey.Sheet.Port.Fact.Valve is { ThroatDiameter: > 0 } valve)
        {
            var seat = Math.PI / 4 * valve.ThroatDiameter * valve.ThroatDiameter;
            var length = survey.Centreline.Length;
            yield return new(PortVolume.Rule, $"Port volume", Dimension.Volume,
                new(PortVolume.Frustum(wanted.Least, seat, length), PortVolume.Frustum(wanted.Most, seat, length)),
                survey.Volume is { } volume
                    ? Estimate.Exact(volume.Measured).With(new Contribution("burette", volume.MeasuredDoubt, double.PositiveInfinity, ContributionKind.Other)) : null,
                $"Wanted: an even taper from the flange section the speeds ask for to the throat, {Quantity.Length(length)} long.");
        }
    }

    /// <summary>Engine speed at which a section is the limit, rad/s, with the doubt of the section, of the rule's own figure, of the intake's warmth, and of the rod where nobody stated it.</summary>
    private static Estimate Limit(PlanInFull plan, Estimate area)
    {
        var mach = NamedLimits.SectionMach;
        double Of(SliderCrank crank) => SectionSpeed.LimitRevolutionsASecond(plan.Bore.Value, crank, area.Value, plan.Air.State.SpeedOfSound, mach.Limits.Middle) * 2 * Math.PI;
        Contribution Doubt(string source, double half) => new(source, half / Math.Sqrt(3), double.PositiveInfinity, ContributionKind.Other);
        var limit = Of(plan.Throw);
        var told = Estimate.Linear(limit, (limit / area.Value, area))
            .With(Doubt("where a section is the limit", limit * mach.Vague / mach.Limits.Middle))
            .With(new Contribution(InletMachIndex.SoundSource, limit * InletMachIndex.SoundDoubt, double.PositiveInfinity, ContributionKind.Other));
        return plan.Rod.IsAssumed ? told.With(Doubt("rod nobody stated", Math.Abs(Of(plan.WithRod(PlanInFull.LongRod)) - Of(plan.WithRod(PlanInFull.ShortRod))) / 2)) : told;
    }
}
