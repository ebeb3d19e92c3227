using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>A reading under the leak: taking the leak off leaves less than nothing, and no air goes backwards.</summary>
public static class UnderTheLeak
{
    /// <summary>The sentence; null where the reading is not under the leak. With the valve shut a reading scatters about the leak: there it must lie under it by more than its doubt.</summary>
    /// <param name="area">m2, the leak taken off.</param>
    public static string? Words(FlowReading reading, double lift, Estimate area)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(area);
        return area.Value + (lift > 0 ? 0 : area.Expanded()) < 0
            ? $"The reading {reading.Reading.WithUnit} at lift {reading.Lift.WithUnit} is under what leaks with the port closed off, and its flow comes out below zero: no air goes backwards. Look at the number and its range, or test the leak again."
            : null;
    }
}
