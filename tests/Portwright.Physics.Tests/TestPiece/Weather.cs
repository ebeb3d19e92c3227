using CsCheck;
using Portwright.Physics.Air;

namespace Portwright.Physics.Tests.TestPiece;

/// <summary>Rooms a bench may stand in: high and low, hot and cold, dry and steamy.</summary>
internal static class Weather
{
    public static readonly Gen<AirState> Any =
        Gen.Select(Gen.Double[70_000, 106_000], Gen.Double[278.15, 311.15], Gen.Double[0, 1], AirState.FromRelativeHumidity);

    /// <summary>One day from a cool wet morning to a hot afternoon under a falling barometer.</summary>
    public static IReadOnlyList<AirState> OneDay { get; } =
    [
        .. Enumerable.Range(0, 25).Select(i =>
        {
            var share = i / 24.0;
            return AirState.FromRelativeHumidity(101_900 - 1_900 * share, 285.15 + 20 * share, 0.95 - 0.55 * share);
        }),
    ];
}
