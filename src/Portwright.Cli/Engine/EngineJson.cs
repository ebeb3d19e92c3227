using System.Text.Json;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Shop.Record;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Engine;

/// <summary>An engine run as JSON: SI numbers, the unit in each key.</summary>
internal static class EngineJson
{
    public static void Write(TextWriter output, Kept<Job> job, EngineAnswer answer, EngineGain? gained) => JsonText.Write(output, json =>
    {
        var question = answer.Question;
        json.WriteStartObject();
        Ports(json, job, question);
        json.Estimate("mean_torque", "n_m", answer.MeanTorque);
        json.WriteStartArray("speeds");
        foreach (var speed in EngineSpeed.Of(answer))
        {
            json.WriteStartObject();
            Point(json, speed.Point);
            json.Number("standard_uncertainty_torque_n_m", speed.Torque.StandardUncertainty);
            json.Number("standard_uncertainty_power_w", speed.Power.StandardUncertainty);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Lifts(json, "worth_of_intake_area", answer.Worth.Intake);
        Lifts(json, "worth_of_exhaust_area", answer.Worth.Exhaust);
        Sections(json, "worth_of_intake_sections", answer.Worth.IntakeSections);
        Sections(json, "worth_of_exhaust_sections", answer.Worth.ExhaustSections);
        if (gained is not null)
        {
            json.WriteStartObject("against");
            json.WriteString("port", gained.Then.Port.Fact.Name);
            json.WriteNumber("cut", gained.Then.Cut.Fact.Number);
            json.Estimate("difference_mean_torque", "n_m", gained.Of.Of);
            json.Number("probability_of_gain", gained.Of.ProbabilityOfGain);
            json.WriteString("verdict", VerdictWords.Key(gained.Of.Verdict));
            json.WriteEndObject();
        }

        Strings(json, "assumed", EngineSentences.Assumed(question));
        Strings(json, "cautions", question.Cautions);
        Strings(json, "not_known", EngineAnswer.NotKnown);
        json.WriteEndObject();
    });

    /// <summary>Job and the ports the engine breathes through.</summary>
    public static void Ports(Utf8JsonWriter json, Kept<Job> job, EngineQuestion question)
    {
        json.WriteString("job", job.Fact.Name);
        foreach (var kind in (PortKind[])[PortKind.Intake, PortKind.Exhaust])
        {
            if (question.Pair.Of(kind) is not { Sheet: { Flow: not null } sheet }) continue;
            json.WriteStartObject(EngineSentences.Name(kind));
            json.WriteString("head", sheet.Head.Fact.Name);
            json.WriteString("port", sheet.Port.Fact.Name);
            json.WriteNumber("cut", sheet.Cut.Fact.Number);
            json.WriteEndObject();
        }

        json.WriteBoolean("all_cylinders", question.Design.FiringOrder is not null);
        json.WriteNumber("cylinders", question.Plan.Cylinders);
    }

    public static void Point(Utf8JsonWriter json, OperatingPoint p)
    {
        json.Number("speed_rad_s", 2 * Math.PI * p.TurnsASecond);
        json.Number("torque_n_m", p.Torque);
        json.Number("power_w", p.Power);
        json.Number("volumetric_efficiency", p.VolumetricEfficiency);
        json.Number("trapped_mass_kg", p.TrappedMass);
        json.Number("residual", p.Residual);
        json.Number("reversion", p.Reversion);
        json.Number("fresh_lost", p.FreshLost);
        json.Number("peak_pressure_pa", p.PeakPressure);
        json.Number("indicated_pressure_pa", p.IndicatedPressure);
        json.Number("brake_pressure_pa", p.BrakePressure);
        json.Number("pumping_pressure_pa", p.PumpingPressure);
        json.Number("friction_pressure_pa", p.FrictionPressure);
        json.WriteNumber("cycles", p.Cycles);
        json.WriteBoolean("settled", p.IsSettled);
    }

    public static void Strings(Utf8JsonWriter json, string key, IEnumerable<Sentence> sentences)
    {
        json.WriteStartArray(key);
        foreach (var s in sentences) json.WriteStringValue(s.In(UnitSystem.Si));
        json.WriteEndArray();
    }

    private static void Lifts(Utf8JsonWriter json, string key, IReadOnlyList<LiftWorth> worth)
    {
        json.WriteStartArray(key);
        foreach (var w in worth)
        {
            json.WriteStartObject();
            json.Number("lift_m", w.Lift);
            json.Number("effective_area_m2", w.Area);
            json.Number("mean_torque_for_relative_gain_n_m", w.Torque);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Sections(Utf8JsonWriter json, string key, IReadOnlyList<SectionWorth> worth)
    {
        json.WriteStartArray(key);
        foreach (var w in worth)
        {
            json.WriteStartObject();
            json.Number("distance_from_seat_m", w.Distance);
            json.Number("area_m2", w.Area);
            json.Number("mean_torque_for_relative_gain_n_m", w.Torque);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
