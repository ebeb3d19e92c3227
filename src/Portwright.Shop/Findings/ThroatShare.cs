using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>Throat against valve, as the trade counts it: throat diameter over valve head diameter.</summary>
/// <param name="Share">With the caliper's doubt.</param>
/// <param name="Throat">m.</param>
/// <param name="Valve">m.</param>
/// <param name="Behind">The facts it rests on.</param>
public sealed record ThroatShare(Estimate Share, double Throat, double Valve, SurveyedStation? Station, IReadOnlyList<Guid> Behind)
{
    /// <summary>What is usual, by the register.</summary>
    public static NamedLimit Usual => NamedLimits.ThroatOverValve;

    /// <summary>By the measured section at the throat's station (the round of its area) where there is one, else by the diameter written down with the valve; null without a valve.</summary>
    public static ThroatShare? Of(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Port is not { Fact.Valve: { HeadDiameter: > 0 } valve } owner)
        {
            return null;
        }

        var calliper = port.Sheet.Bench?.Fact.Doubt.Calliper ?? BenchDoubt.Unknown.Calliper;
        // Named as the window's coefficients name them: one measured valve, one cause of doubt.
        Estimate Length(string what, double metres) => Estimate.Exact(metres).With(
            new Contribution(Sources.OfValve(owner.Id, what), calliper, double.PositiveInfinity, ContributionKind.Geometry));
        var head = Length("valve head", valve.HeadDiameter);
        if (port.At(StationRole.Throat) is { Section: { } section } station)
        {
            // The rule is one of the bore: a stem or guide in it is no part of the seat's metal.
            var bore = section.WithinWall;
            var round = Math.Sqrt(4 * bore.Value / Math.PI);
            var measured = Estimate.Linear(round, (round / (2 * bore.Value), bore));
            return new ThroatShare(Estimate.Ratio(measured, head), round, valve.HeadDiameter, station, [section.Section.Id, owner.Id]);
        }

        return valve.ThroatDiameter > 0
            ? new ThroatShare(Estimate.Ratio(Length("throat", valve.ThroatDiameter), head), valve.ThroatDiameter, valve.HeadDiameter, null, [owner.Id])
            : null;
    }

    /// <summary>As a porter says it.</summary>
    public Sentence Words => $"The throat is {Quantity.Length(Throat)} under a valve of {Quantity.Length(Valve)}: {Quantity.Share(Share.Value)}, {(Station is null ? "by the diameter written down" : $"by the section measured at {Station.Letter}")}; usual is {Usual.Said}.";

    /// <summary>The measurement that would decide it best.</summary>
    public Sentence Next => Station is null
        ? (Sentence)$"Measure the throat as a section: two diameters square to each other, or a trace."
        : $"Measure the throat once more across and along the port: an oval throat shows there.";
}
