using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
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
                var all = station.Section!.Area.Scale(survey.Intakes);
                var limit = SectionSpeed.LimitRevolutionsASecond(plan.Bore.Value, plan.Throw, all.Value, plan.Air.State.SpeedOfSound) * 2 * Math.PI;
                yield return new(SectionSpeed.LimitRule, $"{station.Name} becomes the limit at", Dimension.RotationalSpeed, TargetRange.AtLeast(plan.HighestSpeed.Value),
                    Estimate.Linear(limit, (limit / all.Value, all)), $"");
            }
        }

        if (Findings.ThroatShare.Of(survey) is { } throat)
        {
            yield return new(Physics.Targets.ThroatShare.Rule, $"Throat over valve, by diameter", Dimension.Fraction, TargetRange.Of(Physics.Targets.ThroatShare.Usual), throat.Share,
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
}
