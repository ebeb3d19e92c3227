using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Physics.Statistics;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Cli.Sheet;

/// <summary>A port sheet as plain text at 80 columns.</summary>
internal sealed class SheetPage(TextWriter output, PortSurvey survey, IReadOnlyList<Finding> findings, UnitSystem units, PortInEngine? engine = null)
{
    private readonly PortSheet _sheet = survey.Sheet;
    private readonly Page _page = new(output);

    public void Write()
    {
        Head();
        if (_sheet.Flow is { } flow)
        {
            Flow(flow);
            Against("last", _sheet.AgainstLast);
            Against("first", _sheet.AgainstFirst);
        }
        new SurveyPage(_page, survey, findings, units, engine?.Answer).Write();
        Engine();
        Bench();
        List("look at", [.. _sheet.Remarks, .. survey.Remarks]);
        List("caution", _sheet.Cautions);
    }

    private void Head()
    {
        var where = $"{Capital(_sheet.Port.Fact.Name)}, {_sheet.Head.Fact.Name}, cut {_sheet.Cut.Fact.Number}";
        var job = _sheet.Job.Fact.Customer.Length > 0 ? $"{_sheet.Job.Fact.Name}, {_sheet.Job.Fact.Customer}" : _sheet.Job.Fact.Name;
        if (where.Length + job.Length + 2 <= Page.Width) _page.Line(where + job.PadLeft(Page.Width - where.Length));
        else
        {
            _page.Paragraph(where);
            _page.Paragraph(job);
        }
        _page.Line(new string('=', Page.Width));
        _page.Paragraph($"{_sheet.Cut.Fact.Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}. {_sheet.Cut.Fact.Done}");
    }

    private void Flow(CutFlow flow)
    {
        var curve = flow.Curve;
        var air = $"{Print.Number(curve.Air.Pressure, Dimension.Barometer, UnitSystem.Si, 3)}, {Print.Number(curve.Air.Temperature, Dimension.Temperature, units, 0)}, {(curve.Air.RelativeHumidity == 0 ? "dry" : Print.Number(curve.Air.RelativeHumidity, Dimension.Fraction, units, 0) + " humid")}";
        var sweeps = flow.Sweeps.Count == 1 ? "1 sweep" : $"{flow.Sweeps.Count} sweeps";
        _page.Paragraph($"Flow at {Print.Number(curve.RestatedAt, Dimension.Pressure, UnitSystem.UsCustomary, 0)} in standard air ({air}), {(curve.Direction == FlowDirection.Draw ? "drawn" : "blown")}. {sweeps}, {curve.Points.Sum(p => p.Readings.Count)} readings. ± is half of a 95 percent interval.");
        _page.Line();
        new FlowTable(_page, _sheet, units).Write();
        if (_sheet.Windows.Count > 0) _page.Paragraph("Cd: flow over what a loss-free nozzle of the curtain, the valve window, the throat less the stem would pass.", 2);
        _page.Line();
        if (_sheet.Cam is { Flow: { } atCam } cam) _page.Pair($"at the cam's lift {Lift(cam.Lift)}", WithDoubt(atCam));
        if (_sheet.Mean is { } mean) _page.Pair($"mean from {Lift(mean.From)} to {Lift(mean.To)}", WithDoubt(mean.Flow));
        if (_sheet.ThroatTakesOver is { } over) _page.Pair("throat takes over from lift", Lift(over));
        if (curve.Points.Count > 0) Doubt(curve.Points[^1]);
    }

    /// <summary>What the doubt of the highest lift is made of: where a better bench would show first.</summary>
    private void Doubt(LiftPoint point)
    {
        var kinds = point.Flow.ByKind().Where(k => k.ShareOfVariance >= 0.05).Take(4)
            .Select(k => string.Create(CultureInfo.InvariantCulture, $"{KindWords(k.Kind)} {k.ShareOfVariance * 100:F0} %"));
        _page.Pair($"doubt at {Lift(point.Lift)} comes from", string.Join(", ", kinds));
    }

    private void Against(string which, CutComparison? against)
    {
        if (against is null) return;
        _page.Line();
        var whole = against.Curves.WholeCurve;
        _page.Line($"cut {against.This.Cut.Fact.Number} less cut {against.Last.Cut.Fact.Number}{(which == "first" ? ", the first tested" : "")}");
        _page.Pair("whole curve", $"{Signed(whole.Of)}, {VerdictWords.Short(whole)}{More(whole)}");
        foreach (var band in against.Curves.Bands)
            _page.Pair($"{band.Band.Name}, {Lift(band.TestedFrom)} to {Lift(band.TestedTo)}", $"{Signed(band.Difference.Of)}, {VerdictWords.Short(band.Difference)}{More(band.Difference)}");
    }

    /// <summary>What the engine makes of it, where it was run.</summary>
    private void Engine()
    {
        if (engine?.Answer is not { } answer) return;
        _page.Line();
        _page.Line("in this engine");
        _page.Paragraph(EngineSentences.Best(answer, units), 2);
        if (answer.Warning.Length > 0) _page.Paragraph(answer.Warning, 2);
        if (engine is { Gain: { } gain, Before.Cut.Fact.Number: var before }) _page.Paragraph($"Against cut {before}: {EngineSentences.Gain(gain, units)}.", 2);
        _page.Paragraph(EngineSentences.Pays(answer, units), 2);
    }

    private void Bench()
    {
        _page.Line();
        if (_sheet.Bench is not { } bench)
        {
            _page.Paragraph("No bench card yet.");
            return;
        }
        _page.Line("bench");
        _page.Pair(bench.Fact.Name, string.Join("; ", (_sheet.Flow?.Sweeps[^1].Factors ?? []).Select(f => f.Factor.From is { } from
            ? $"range {f.Range}, meter factor {Number(f.Factor.Factor, Dimension.Ratio)}, calibrated {from.Fact.Date.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}"
            : $"range {f.Range}, meter factor {Number(f.Factor.Factor, Dimension.Ratio)}, never calibrated")));
        if (_sheet.Flow?.Sweeps[^1].LeakArea is { } leak) _page.Pair("leak taken off", Print.WithDoubt(leak.Value, leak.Expanded(), Dimension.Area, units));
        if (_sheet.Morning is { } morning)
        {
            _page.Pair($"morning check, {morning.Mornings[^1].Check.Fact.Date.ToString("d MMM", CultureInfo.InvariantCulture)}", morning.Answer == ChartAnswer.Go ? $"go. {string.Join(' ', morning.Words)}" : $"{morning.Answer.ToString().ToLowerInvariant()}, see below");
        }
        else _page.Pair("morning check", "none made");
    }

    private void List(string heading, IReadOnlyList<string> sentences)
    {
        if (sentences.Count == 0) return;
        _page.Line();
        _page.Line(heading);
        foreach (var sentence in sentences) _page.Paragraph("- " + sentence, 2, 2);
    }

    private string WithDoubt(Estimate e) => Print.WithDoubt(e.Value, e.Expanded(), Dimension.VolumeFlow, units);

    private string Number(Estimate e, Dimension dimension) => Print.WithDoubt(e.Value, e.Expanded(), dimension, units);

    private string Signed(Estimate e) => (e.Value >= 0 ? "+" : "") + WithDoubt(e);

    private string Lift(double si) => Print.Number(si, Dimension.Lift, units);

    private static string More(Difference d) => d is { Verdict: Verdict.NotEnoughReadings, MoreReadings: { } more } ? $" ({more} more of each could decide)" : "";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string KindWords(ContributionKind kind) => kind switch
    {
        ContributionKind.SetUp => "set-up",
        ContributionKind.Other => "other",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
