namespace Portwright.Judging.Shops;

/// <summary>
/// What the readings of the air say to one who knows all but whether there is a fault: the air of this port as it would be sound, the fault's place, width and size, the factor of the ball in
/// this check, the flow without it, and how the readings scatter.
/// </summary>
public sealed class KnownAir
{
    /// <summary>Logarithm of the likelihood of all readings with the fault over that without.</summary>
    public double LogRatio { get; private set; }

    /// <summary>Something read, bell-shaped about one mean in sound air and about another with the fault.</summary>
    public void Read(double read, (double Mean, double Scatter) sound, (double Mean, double Scatter) faulty)
    {
        static double Log((double Mean, double Scatter) of, double read) => -Math.Log(of.Scatter) - (read - of.Mean) * (read - of.Mean) / (2 * of.Scatter * of.Scatter);
        // Where nothing is planted the two are the same to the last digit.
        if (sound != faulty) LogRatio += Log(faulty, read) - Log(sound, read);
    }

    /// <summary>A thing seen that the fault makes sure.</summary>
    /// <param name="inSoundAir">How often it is seen without, 0 to 1.</param>
    public void Seen(double inSoundAir) => LogRatio -= Math.Log(inSoundAir);
}
