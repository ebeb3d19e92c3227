namespace Portwright.Cli.Engine;

/// <summary>A bar of characters about a middle: to the right what pays, to the left what costs.</summary>
internal static class WorthBar
{
    /// <summary>Characters of the longest bar on one side.</summary>
    public const int Half = 16;

    public static string Of(double worth, double most, int half = Half)
    {
        var n = most > 0 ? (int)Math.Round(half * Math.Abs(worth) / most, MidpointRounding.AwayFromZero) : 0;
        return worth < 0 ? new string('-', n).PadLeft(half) + "|" : new string(' ', half) + "|" + new string('+', n);
    }
}
