using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Portwright.Physics.Uncertainty;

/// <summary>
/// Propagation of distributions by the Monte Carlo method (JCGM 101:2008, GUM Supplement 1): the check on the linear
/// law. One seed gives one answer.
/// </summary>
public static class MonteCarlo
{
    /// <summary>Fewer trials than this are refused.</summary>
    public const int FewestTrials = 1000;

    /// <summary>A run of a fixed number of trials.</summary>
    /// <param name="trials">At least 1000; JCGM 101:2008, 7.2.2 advises 1e6 for a 95 percent interval to two digits.</param>
    /// <param name="seed">Seed of the generator.</param>
    /// <param name="level">Coverage probability, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The model has no finite value in some trial.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1000 trials, or a level that is not above 0 and below 1.</exception>
    public static MonteCarloResult Propagate<TModel>(
        in TModel model, ReadOnlySpan<InputEstimate> inputs, int trials = 1_000_000, int seed = 1, double level = 0.95)
        where TModel : IMeasurementModel
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, FewestTrials);
        CheckLevel(level);
        var values = new double[trials];
        Draw(model, inputs, new Xoshiro256StarStar(seed, false), values);
        return Summary(values, level);
    }

    private static void Draw<TModel>(in TModel model, ReadOnlySpan<InputEstimate> inputs, RandomSource generator, double[] values)
        where TModel : IMeasurementModel
    {
        // Inputs of one source take the draw of the first of them.
        var first = new int[inputs.Length];
        for (var i = 0; i < inputs.Length; i++)
        {
            while (inputs[first[i]].Source != inputs[i].Source) first[i]++;
        }
        var x = new double[inputs.Length];
        var standard = new double[inputs.Length];
        for (var trial = 0; trial < values.Length; trial++)
        {
            for (var i = 0; i < inputs.Length; i++)
            {
                standard[i] = first[i] < i ? standard[first[i]] : Standard(inputs[i], generator);
                x[i] = inputs[i].Value + inputs[i].StandardUncertainty * standard[i];
            }
            values[trial] = model.Evaluate(x);
            if (!double.IsFinite(values[trial]))
                throw new ArgumentException("The model has no finite value for inputs within their distributions.", nameof(inputs));
        }
    }

    /// <summary>A draw about 0 in standard uncertainties.</summary>
    private static double Standard(InputEstimate input, RandomSource generator) => input.Shape switch
    {
        InputShape.Normal when double.IsFinite(input.DegreesOfFreedom) => StudentT.Sample(generator, 0, 1, input.DegreesOfFreedom),
        InputShape.Normal => Normal.Sample(generator, 0, 1),
        InputShape.Rectangular => Math.Sqrt(3) * (2 * generator.NextDouble() - 1),
        InputShape.Triangular => Math.Sqrt(6) * (generator.NextDouble() + generator.NextDouble() - 1),
        _ => Math.Sqrt(2) * Math.Sin(2 * Math.PI * generator.NextDouble()),
    };

    private static MonteCarloResult Summary(double[] values, double level)
    {
        var mean = RepeatScatter.Mean(values);
        var u = RepeatScatter.Of(values).StandardDeviation;
        Array.Sort(values);
        var covered = (int)Math.Round(level * values.Length, MidpointRounding.AwayFromZero);
        covered = Math.Clamp(covered, 1, values.Length - 1);
        var start = (values.Length - covered) / 2;
        var shortest = start;
        for (var r = 0; r + covered < values.Length; r++)
        {
            if (values[r + covered] - values[r] < values[shortest + covered] - values[shortest]) shortest = r;
        }
        return new(mean, u, new(values[start], values[start + covered]),
            new(values[shortest], values[shortest + covered]), values.Length, level);
    }

    private static void CheckLevel(double level)
    {
        if (!(level > 0 && level < 1))
            throw new ArgumentOutOfRangeException(nameof(level), level, "A coverage probability must be above 0 and below 1.");
    }
}
