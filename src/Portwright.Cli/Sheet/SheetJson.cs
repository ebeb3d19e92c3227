using System.Text.Json;
using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;

namespace Portwright.Cli.Sheet;

/// <summary>A port sheet as JSON: SI numbers, the unit in each key.</summary>
internal static class SheetJson
{
    public static void Write(TextWriter output, PortSurvey survey, IReadOnlyList<Finding> findings, IReadOnlyList<string> leftOut, PortInEngine engine) => JsonText.Write(output, json =>
    {
        var sheet = survey.Sheet;
        json.WriteStartObject();
        json.WriteString("job", sheet.Job.Fact.Name);
        json.WriteString("head", sheet.Head.Fact.Name);
        json.WriteString("port", sheet.Port.Fact.Name);
        json.WriteNumber("cut", sheet.Cut.Fact.Number);
        json.WriteString("date", sheet.Cut.Fact.Date.ToString("O", System.Globalization.CultureInfo.InvariantCulture));
        json.WriteString("done", sheet.Cut.Fact.Done);
        if (sheet.Flow is { } flow)
        {
            json.WriteString("direction", flow.Curve.Direction.ToString().ToLowerInvariant());
            json.Number("restated_at_pa", flow.Curve.RestatedAt);
            json.Number("standard_air_pressure_pa", flow.Curve.Air.Pressure);
            json.Number("standard_air_temperature_k", flow.Curve.Air.Temperature);
            json.Number("standard_air_relative_humidity", flow.Curve.Air.RelativeHumidity);
            json.WriteStartArray("lifts");
            foreach (var point in flow.Curve.Points) Point(json, sheet, point);
            json.WriteEndArray();
            if (sheet.Cam is { } cam)
            {
                json.WriteStartObject("cam");
                json.Number("lift_m", cam.Lift);
                if (cam.Flow is { } at) Estimate(json, "flow", "m3_s", at);
                json.WriteEndObject();
            }
            if (sheet.Mean is { } mean)
            {
                json.WriteStartObject("mean");
                json.Number("from_m", mean.From);
                json.Number("to_m", mean.To);
                Estimate(json, "flow", "m3_s", mean.Flow);
                json.WriteEndObject();
            }
        }
        Against(json, "against_last", sheet.AgainstLast);
        Against(json, "against_first", sheet.AgainstFirst);
        if (sheet.Morning is { } morning) json.WriteString("morning", morning.Answer.ToString().ToLowerInvariant());
        SurveyJson.Write(json, survey, findings, engine.Answer);
        Engine(json, engine);
        Strings(json, "cautions", sheet.Cautions);
        Strings(json, "remarks", [.. sheet.Remarks, .. survey.Remarks]);
        Strings(json, "left_out", leftOut);
        json.WriteEndObject();
    });

    private static void Engine(Utf8JsonWriter json, PortInEngine engine)
    {
        if (engine.Answer is not { } answer) return;
        json.WriteStartObject("engine");
        Estimate(json, "mean_torque", "n_m", answer.MeanTorque);
        if (engine is { Gain: { } gain, Before.Cut.Fact.Number: var before })
        {
            json.WriteNumber("against_cut", before);
            Estimate(json, "difference_mean_torque", "n_m", gain.Of);
            json.Number("probability_of_gain", gain.ProbabilityOfGain);
        }

        json.WriteEndObject();
    }

    private static void Point(Utf8JsonWriter json, PortSheet sheet, LiftPoint point)
    {
        json.WriteStartObject();
        json.Number("lift_m", point.Lift);
        Estimate(json, "effective_area", "m2", point.EffectiveArea);
        Estimate(json, "flow", "m3_s", point.Flow);
        json.Number("square_root_rule_flow_m3_s", point.PlainRuleFlow);
        if (sheet.Windows.FirstOrDefault(w => Math.Abs(w.Lift - point.Lift) < 1e-7) is { } window)
        {
            json.Number("lift_over_diameter", window.Window.LiftOverDiameter);
            Estimate(json, "cd_curtain", "", window.OfCurtain);
            Estimate(json, "cd_window", "", window.OfWindow);
            Estimate(json, "cd_throat", "", window.OfThroat);
        }
        json.WriteStartArray("readings");
        foreach (var reading in point.Readings) json.WriteStringValue(reading.Reading.Fact.Reading.Text);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Against(Utf8JsonWriter json, string key, CutComparison? against)
    {
        if (against is null) return;
        json.WriteStartObject(key);
        json.WriteNumber("cut", against.Last.Cut.Fact.Number);
        json.WriteStartObject("whole_curve");
        Difference(json, against.Curves.WholeCurve);
        json.WriteEndObject();
        json.WriteStartArray("bands");
        foreach (var band in against.Curves.Bands)
        {
            json.WriteStartObject();
            json.WriteString("band", band.Band.Name);
            json.Number("from_m", band.TestedFrom);
            json.Number("to_m", band.TestedTo);
            Difference(json, band.Difference);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("lifts");
        foreach (var lift in against.Curves.Lifts)
        {
            json.WriteStartObject();
            json.Number("lift_m", lift.Lift);
            Difference(json, lift.Difference);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Difference(Utf8JsonWriter json, Difference difference)
    {
        Estimate(json, "difference", "m3_s", difference.Of);
        json.Number("probability_of_gain", difference.ProbabilityOfGain);
        json.WriteString("verdict", VerdictWords.Key(difference.Verdict));
    }

    public static void Estimate(Utf8JsonWriter json, string key, string unit, Estimate estimate)
    {
        var full = unit.Length == 0 ? key : $"{key}_{unit}";
        json.Number(full, estimate.Value);
        json.Number("standard_uncertainty_" + full, estimate.StandardUncertainty);
        json.Number("expanded_uncertainty_95_" + full, estimate.Expanded());
    }

    private static void Strings(Utf8JsonWriter json, string key, IReadOnlyList<string> sentences)
    {
        json.WriteStartArray(key);
        foreach (var s in sentences) json.WriteStringValue(s);
        json.WriteEndArray();
    }
}
