using System.Collections.Immutable;

namespace Portwright.Physics.Uncertainty;

/// <summary>
/// The law of propagation of uncertainty (JCGM 100:2008, eq. 10), with the sensitivity coefficients found numerically.
/// </summary>
/// <remarks>
/// JCGM 100:2008, 5.1.3 note 2 allows half the change of the result over plus and minus one standard uncertainty. Here
/// the central difference is taken over the larger of u/100 and 6e-6 of the value (about the cube root of the machine
/// epsilon, where cutting and rounding errors are alike): the coefficient is then the derivative itself, right to
/// about 1e-10 for smooth models, and a reading near the edge of the model's domain is not pushed over it. Where one
/// side is outside the domain the difference is one-sided. Terms of second order are left out; the Monte Carlo check
/// shows where they matter.
/// </remarks>
public static class Propagation
{
    private const int OnStack = 64;

    /// <summary>The result of a model with its doubt cause by cause. Inputs of one source move together.</summary>
    /// <exception cref="ArgumentException">The model has no finite value at the inputs.</exception>
    public static Estimate Propagate<TModel>(in TModel model, params ReadOnlySpan<InputEstimate> inputs)
        where TModel : IMeasurementModel
    {
        var n = inputs.Length;
        Span<double> values = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        Span<double> uncertainties = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        Span<double> amounts = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        for (var i = 0; i < n; i++)
        {
            values[i] = inputs[i].Value;
            uncertainties[i] = inputs[i].StandardUncertainty;
        }
        var value = Finite(Propagate(model, values[..n], uncertainties[..n], amounts[..n]));

        var contributions = ImmutableArray.CreateBuilder<Contribution>(n);
        for (var i = 0; i < n; i++)
        {
            if (uncertainties[i] > 0) contributions.Add(inputs[i].ToContribution(amounts[i]));
        }
        return new(value, contributions.DrainToImmutable());
    }

    /// <summary>A model of results that are estimates themselves: causes they share are carried through as shared.</summary>
    /// <exception cref="ArgumentException">The model has no finite value at the inputs.</exception>
    public static Estimate Propagate<TModel>(in TModel model, params ReadOnlySpan<Estimate> inputs)
        where TModel : IMeasurementModel
    {
        var n = inputs.Length;
        Span<double> values = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        Span<double> uncertainties = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        Span<double> amounts = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        for (var i = 0; i < n; i++)
        {
            values[i] = inputs[i].Value;
            uncertainties[i] = inputs[i].StandardUncertainty;
        }
        var value = Finite(Propagate(model, values[..n], uncertainties[..n], amounts[..n]));

        var terms = new (double, Estimate)[n];
        for (var i = 0; i < n; i++) terms[i] = (uncertainties[i] > 0 ? amounts[i] / uncertainties[i] : 0, inputs[i]);
        return Estimate.Linear(value, terms);
    }

    /// <summary>
    /// The same without any allocation, for many readings: returns the value and writes c_i u(x_i), signed, for each input. In the unit of the result.
    /// </summary>
    /// <param name="values">Inputs, at most 64 without allocation, each in the unit the model takes.</param>
    /// <param name="uncertainties">Standard uncertainties of the inputs; where 0 the model is not evaluated and the amount is 0, in the unit of each input.</param>
    /// <param name="amounts">Receives the contributions, in the unit of the result.</param>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    public static double Propagate<TModel>(
        in TModel model, ReadOnlySpan<double> values, ReadOnlySpan<double> uncertainties, Span<double> amounts)
        where TModel : IMeasurementModel
    {
        var n = values.Length;
        if (uncertainties.Length != n || amounts.Length != n)
            throw new ArgumentException($"{n} values need {n} uncertainties and room for {n} amounts.", nameof(uncertainties));
        Span<double> x = n <= OnStack ? stackalloc double[OnStack] : new double[n];
        x = x[..n];
        values.CopyTo(x);
        var result = model.Evaluate(x);
        for (var i = 0; i < n; i++)
        {
            amounts[i] = uncertainties[i] > 0 ? uncertainties[i] * Sensitivity(model, x, i, uncertainties[i], result) : 0;
        }
        return result;
    }

    private static double Sensitivity<TModel>(in TModel model, Span<double> x, int i, double u, double result)
        where TModel : IMeasurementModel
    {
        var centre = x[i];
        var step = Math.Max(u / 100, 6e-6 * Math.Abs(centre));
        var (high, low) = (centre + step, centre - step);
        x[i] = high;
        var above = model.Evaluate(x);
        x[i] = low;
        var below = model.Evaluate(x);
        x[i] = centre;
        // The steps as they were rounded, not as they were meant.
        if (!double.IsFinite(below)) (below, low) = (result, centre);
        if (!double.IsFinite(above)) (above, high) = (result, centre);
        return (above - below) / (high - low);
    }

    private static double Finite(double result) => double.IsFinite(result)
        ? result
        : throw new ArgumentException("The model has no finite value at these inputs.", nameof(result));
}
