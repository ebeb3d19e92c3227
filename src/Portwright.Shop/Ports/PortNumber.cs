using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>A number a port sheet prints, with everything in doubt about it.</summary>
/// <param name="Key">For programs, one a port at a cut; the quantity that prints it names it (<see cref="Quantity.Budget"/>).</param>
/// <param name="Name">As the sheet calls it: <c>flow at .400</c>.</param>
/// <param name="Judged">What a difference is worth; null for what is none.</param>
/// <param name="IsMain">False for those whose table is made on asking only: differences at single lifts and over bands, targets.</param>
public sealed record PortNumber(string Key, Sentence Name, Estimate Estimate, Dimension Dimension, Difference? Judged = null, bool IsMain = true)
{
    /// <summary>As it is printed, a difference with what it is worth.</summary>
    public Sentence Printed => Judged is { } judged ? VerdictWords.Said(judged, Dimension) : $"{Quantity.Of(Estimate, Dimension)}";

    /// <summary>Every number of a port that has a budget, in the sheet's order.</summary>
    public static IEnumerable<PortNumber> Of(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return [.. OfFlow(port.Sheet), .. OfShape(port.Survey), .. OfTargets(port)];
    }

    /// <summary>The number the sheet is read for first; null before a sweep.</summary>
    public static PortNumber? First(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Survey.LiftThatCounts is { } lift ? FlowAt(port, lift) : null;
    }

    /// <summary>The flow at a lift (m) inside the tested range; null outside it.</summary>
    public static PortNumber? FlowAt(PortAtCut port, double lift)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { Curve: var curve }) return null;
        return curve.PointAt(lift) is { } point ? FlowAt(port.Sheet, point.Lift, point.Flow) : curve.At(lift) is { } between ? FlowAt(port.Sheet, lift, between) : null;
    }

    private static PortNumber FlowAt(Sheets.PortSheet sheet, double lift, Estimate flow) => new(
        FlowKey(lift), $"flow at {(sheet.Cam is { } cam && LiftGroups.Same(cam.Lift, lift) ? "the cam's lift " : "")}{Quantity.Lift(lift)}", flow, Dimension.VolumeFlow);

    internal static string FlowKey(double lift) => $"flow-{At(lift)}";

    public static string LessKey(CutComparison against) => FormattableString.Invariant($"less-cut-{against.Last.Cut.Fact.Number}");

    public static string LessKey(CutComparison against, double lift) => $"{LessKey(against)}-{At(lift)}";

    internal static string LessKey(CutComparison against, LiftBand band) => $"{LessKey(against)}-{band.Name.Replace(' ', '-')}";

    internal static string SectionKey(SurveyedStation station) => SectionKey(station.Letter);

    public static string SectionKey(string letter) => $"section-area-{letter.ToLowerInvariant()}";

    public static string RingKey(string letter) => $"ring-mean-{letter.ToLowerInvariant()}";

    public static string BallKey(int index) => FormattableString.Invariant($"ball-loss-{index + 1}");

    internal static string TargetKey(int index) => FormattableString.Invariant($"target-{index + 1}");

    public const string MeanKey = "mean-flow", VolumeKey = "port-volume";

    /// <summary>The flow at the lift that counts where that lies between two tested lifts.</summary>
    private static IEnumerable<PortNumber> OfFlow(Sheets.PortSheet sheet)
    {
        if (sheet.Flow is not { Curve: var curve }) yield break;
        if (sheet.Cam is { Lift: var lift, Flow: { } atCam } && curve.PointAt(lift) is null)
            yield return FlowAt(sheet, lift, atCam);
        foreach (var point in curve.Points) yield return FlowAt(sheet, point.Lift, point.Flow);
        if (sheet.Mean is { } mean) yield return new(MeanKey, $"mean flow from {Quantity.Lift(mean.From)} to {Quantity.Lift(mean.To)}", mean.Flow, Dimension.VolumeFlow);
        foreach (var against in new[] { sheet.AgainstLast, sheet.AgainstFirst }.OfType<CutComparison>())
        {
            foreach (var number in Less(against, $"cut {against.Last.Cut.Fact.Number}")) yield return number;
        }
    }

    /// <summary>One flow less another: the whole curve, each band, each lift. What both name as a cause cancels, whichever port or day they are of.</summary>
    /// <param name="less">What is taken off: <c>cut 2</c>, <c>head B intake 3</c>.</param>
    public static IEnumerable<PortNumber> Less(CutComparison against, Sentence less)
    {
        ArgumentNullException.ThrowIfNull(against);
        PortNumber Of(string key, Sentence what, Difference of, bool main = false) => new(key, $"{what} less {less}", of.Of, Dimension.VolumeFlow, of, main);
        yield return Of(LessKey(against), $"whole curve", against.Curves.WholeCurve, main: true);
        foreach (var band in against.Curves.Bands) yield return Of(LessKey(against, band.Band), $"{band.Band.Name}", band.Difference);
        foreach (var at in against.Curves.Lifts) yield return Of(LessKey(against, at.Lift), $"flow at {Quantity.Lift(at.Lift)}", at.Difference);
    }

    private static IEnumerable<PortNumber> OfShape(PortSurvey survey)
    {
        if (survey.PortVolume is { } volume) yield return new(VolumeKey, $"port volume", volume, Dimension.Volume);
        foreach (var station in survey.Stations)
        {
            if (station.Section is { } section) yield return new(SectionKey(station), $"area of section {station.Name}", section.Area, Dimension.Area);
            if (station.Ring is { Map: { } map } ring)
                yield return new(RingKey(station.Letter), $"mean speed of ring {station.Letter} at {Quantity.Lift(ring.Lift)}", map.Mean, Dimension.Speed);
        }

        foreach (var (ball, i) in survey.Balls.Select((b, i) => (b, i)))
        {
            Sentence place = $"{ball.Station.Fact.Letter}, {(ball.Bearing is { } hours ? Bearings.Words(hours) : "middle")}";
            yield return new(BallKey(i), $"loss with the ball at {place}", ball.Loss, Dimension.VolumeFlow);
            if (ball.Expected is { } expected) yield return new(SurveyWords.ExpectedIn(BallKey(i)), $"loss expected with the ball at {place}", expected, Dimension.VolumeFlow, IsMain: false);
        }
    }

    private static IEnumerable<PortNumber> OfTargets(PortAtCut port) => port.Engine.Targets
        .Select((t, i) => t.Measured is { StandardUncertainty: > 0 } measured ? new PortNumber(TargetKey(i), t.What, measured, t.Dimension, IsMain: false) : null).OfType<PortNumber>();

    /// <summary>A lift as it stands in a key, in whole thousandths of a millimetre: <c>10160-um</c>.</summary>
    private static string At(double lift) => FormattableString.Invariant($"{lift * 1e6:0}-um");
}
