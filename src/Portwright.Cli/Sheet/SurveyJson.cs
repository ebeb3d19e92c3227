using System.Text.Json;
using Portwright.Cli.Terminal;
using Portwright.Shop.Findings;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Cli.Sheet;

/// <summary>What was seen in the port as JSON: SI numbers, bearings as clock hours of the record.</summary>
internal static class SurveyJson
{
    public static void Write(Utf8JsonWriter json, PortSurvey survey, IReadOnlyList<Finding> findings, EngineAnswer? engine)
    {
        json.WriteStartArray("stations");
        foreach (var station in survey.Stations) Station(json, station);
        json.WriteEndArray();
        json.WriteStartArray("findings");
        foreach (var finding in findings) Finding(json, finding, finding.Suggestion is { } cut ? NextCuts.TorqueOf(engine, survey, cut) : null);
        json.WriteEndArray();
    }

    private static void Station(Utf8JsonWriter json, SurveyedStation station)
    {
        json.WriteStartObject();
        json.WriteString("station", station.Letter);
        json.Number("distance_m", station.Distance);
        if (station.Section is { } section)
        {
            SheetJson.Estimate(json, "area", "m2", section.Area);
            json.Number("perimeter_m", section.Shape.Perimeter);
            json.Number("hydraulic_diameter_m", section.HydraulicDiameter);
        }
        if (station.Ring is { Map: { } map } ring)
        {
            SheetJson.Estimate(json, "mean_speed", "m_s", map.Mean);
            json.Number("uniformity_index", map.UniformityIndex);
            if (ring.Closure is { } closure) json.Number("closure", closure.Relative);
        }
        json.WriteStartArray("balls");
        foreach (var ball in station.Balls)
        {
            json.WriteStartObject();
            if (ball.Bearing is { } hours) json.Number("bearing_hours", hours);
            SheetJson.Estimate(json, "loss", "m3_s", ball.Loss);
            if (ball.Expected is { } expected) SheetJson.Estimate(json, "expected", "m3_s", expected);
            if (ball.Response is { } response)
            {
                json.WriteString("answer", SurveyWords.Of(response.Answer));
                json.Number("probability", response.Probability);
            }
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Finding(Utf8JsonWriter json, Finding finding, Physics.Uncertainty.Estimate? torque)
    {
        json.WriteStartObject();
        json.WriteString("finding", finding.Rule.Key);
        json.WriteString("title", finding.Title);
        json.WriteString("sentence", FindingWords.Show(finding.Sentence, UnitSystem.Si));
        json.Number("confidence", finding.Confidence);
        if (finding.Station is { } station) json.WriteString("station", station.Fact.Letter);
        if (finding.Bearing is { } hours) json.Number("bearing_hours", hours);
        if (finding.Suggestion is { } cut)
        {
            json.WriteString("cut", FindingWords.Show(cut.What, UnitSystem.Si));
            SheetJson.Estimate(json, "gain", "m3_s", cut.Gain);
            if (torque is not null) SheetJson.Estimate(json, "gain_mean_torque", "n_m", torque);
        }
        json.WriteEndObject();
    }
}
