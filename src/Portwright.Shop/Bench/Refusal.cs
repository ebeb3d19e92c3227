using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>A reading that cannot be an air flow through this meter: it is kept as it was typed, and left out of the result.</summary>
/// <param name="Why">In a sentence, with the cure.</param>
public sealed record RefusedReading(Kept<FlowReading> Reading, string Why);

/// <summary>The words of what physics refuses.</summary>
internal static class Refusal
{
    /// <summary>The message without the name of the parameter that carried it.</summary>
    public static string Sentence(ArgumentException trouble)
    {
        var message = trouble.Message;
        var parameter = message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        var words = (parameter >= 0 ? message[..parameter] : message.Split('\n')[0]).Trim();
        return words.EndsWith('.') ? words : words + ".";
    }

    internal static RefusedReading Of(Kept<FlowReading> reading, ArgumentException trouble) => new(
        reading,
        $"The reading {reading.Fact.Reading.Text} at lift {reading.Fact.Lift.Text} cannot be an air flow on this range and does not count: {Sentence(trouble)} Type it again, with its unit and decimal point.");
}
