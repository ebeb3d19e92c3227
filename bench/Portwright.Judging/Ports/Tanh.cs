namespace Portwright.Judging.Ports;

/// <summary>a tanh(lift/b): rises as the seat lets it and levels out, with no corner at all.</summary>
public sealed record Tanh(double Asymptote, double Scale) : FlowLaw
{
    /// <summary>The one that starts with the design's slope and passes its flow at the highest lift.</summary>
    public static Tanh Of(FlowDesign design)
    {
        // a tanh(top slope / a) = most: the left side grows with a.
        double low = design.Most, high = 20 * design.Most;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (middle * Math.Tanh(design.Slope * design.Top / middle) < design.Most) low = middle;
            else high = middle;
        }

        return new Tanh(low, low / design.Slope);
    }

    public override double At(double lift) => Asymptote * Math.Tanh(lift / Scale);
}
