using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;

namespace Portwright.Cli.Calc;

/// <summary>A calculation as JSON: SI numbers with full precision, the unit in each key.</summary>
internal static class CalcJson
{
    public static void Write(TextWriter output, string name, Given? given, IReadOnlyList<Input> inputs, Working working, IReadOnlyList<Answer> answers,
        IReadOnlyList<(string Key, string Value)>? words = null) =>
        JsonText.Write(output, json =>
        {
            json.WriteStartObject();
            json.WriteString("calculation", name);
            if (given is not null)
            {
                json.WriteStartObject("given");
                foreach (var (choice, value) in given.Choices) json.WriteString(choice.Replace('-', '_'), value);
                foreach (var input in inputs.Where(i => given.Has(i.Name)))
                {
                    json.Number(input.Key, given[input.Name]);
                    if (given.Values[input.Name].StandardUncertainty is > 0 and var u) json.Number("standard_uncertainty_" + input.Key, u);
                }
                json.WriteEndObject();
            }
            json.WriteStartObject("working");
            foreach (var line in working.Lines) json.Number(line.JsonKey, line.Value);
            json.WriteEndObject();
            json.WriteStartObject("answer");
            foreach (var answer in answers) WriteAnswer(json, answer);
            foreach (var (key, value) in words ?? []) json.WriteString(key, value);
            json.WriteEndObject();
            json.WriteStartArray("remarks");
            foreach (var remark in working.Remarks) json.WriteStringValue(remark);
            json.WriteEndArray();
            json.WriteEndObject();
        });

    private static void WriteAnswer(System.Text.Json.Utf8JsonWriter json, Answer answer)
    {
        var key = answer.Line.JsonKey;
        json.Number(key, answer.Line.Value);
        Estimate estimate = answer.Estimate;
        if (estimate.StandardUncertainty == 0) return;
        json.Number("standard_uncertainty_" + key, estimate.StandardUncertainty);
        json.Number("expanded_uncertainty_95_" + key, estimate.Expanded());
        // Infinite where every doubt typed is taken as exactly known: null.
        json.Number("degrees_of_freedom_" + answer.Line.Key, estimate.EffectiveDegreesOfFreedom);
    }
}
