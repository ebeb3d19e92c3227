using System.Collections.Immutable;

namespace Portwright.Physics.Uncertainty;

public sealed partial record Estimate
{
    public static Estimate operator +(Estimate a, Estimate b) => a.Add(b);

    public static Estimate operator -(Estimate a, Estimate b) => a.Subtract(b);

    /// <param name="factor">Exact, no unit, or in the unit of the result over that of the value.</param>
    public static Estimate operator *(double factor, Estimate e) => e.Scale(factor);

    /// <param name="factor">Exact, no unit, or in the unit of the result over that of the value.</param>
    public static Estimate operator *(Estimate e, double factor) => e.Scale(factor);

    /// <summary>The value and all its doubt times an exact factor.</summary>
    /// <param name="factor">Exact, no unit, or in the unit of the result over that of the value.</param>
    public Estimate Scale(double factor)
    {
        var scaled = ImmutableArray.CreateBuilder<Contribution>(Contributions.Length);
        foreach (var c in Contributions) scaled.Add(c.Times(factor));
        return new(Value * factor, scaled.MoveToImmutable());
    }

    /// <summary>The sum; common causes add with their signs.</summary>
    public Estimate Add(Estimate other) => Linear(Value + other.Value, 1, this, 1, other);

    /// <summary>The difference; common causes cancel as far as both feel them alike.</summary>
    public Estimate Subtract(Estimate other) => Linear(Value - other.Value, 1, this, -1, other);

    /// <summary>The product to first order (JCGM 100:2008, 5.1.2).</summary>
    public Estimate Multiply(Estimate other) => Linear(Value * other.Value, other.Value, this, Value, other);

    /// <summary>The ratio a/b to first order (JCGM 100:2008, 5.1.2): a common relative error leaves it unchanged.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value of <paramref name="b"/> is 0.</exception>
    public static Estimate Ratio(Estimate a, Estimate b)
    {
        if (b.Value == 0)
            throw new ArgumentOutOfRangeException(nameof(b), b.Value, "A ratio needs a denominator that is not 0.");
        return Linear(a.Value / b.Value, 1 / b.Value, a, -a.Value / (b.Value * b.Value), b);
    }

    /// <summary>The same value with one more thing in doubt.</summary>
    public Estimate With(Contribution contribution) => new(Value, Contributions.Add(contribution));

    /// <summary>The weighted sum of several estimates.</summary>
    /// <param name="terms">Weights or sensitivities, in the unit of the result over that of the estimate.</param>
    public static Estimate Combine(params ReadOnlySpan<(double Weight, Estimate Estimate)> terms)
    {
        var value = 0.0;
        foreach (var (weight, e) in terms) value += weight * e.Value;
        return Linear(value, terms);
    }

    /// <summary>The plain mean of several estimates.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static Estimate Mean(params ReadOnlySpan<Estimate> estimates)
    {
        if (estimates.IsEmpty) throw new ArgumentException("A mean needs at least one estimate.", nameof(estimates));
        var terms = new (double, Estimate)[estimates.Length];
        for (var i = 0; i < terms.Length; i++) terms[i] = (1.0 / terms.Length, estimates[i]);
        return Combine(terms);
    }

    /// <summary>
    /// A result computed elsewhere, with the sensitivity coefficients of the estimates it was computed from
    /// (JCGM 100:2008, eq. 13 in the form of F.1.2.3).
    /// </summary>
    /// <param name="value">The value, in the unit of the result.</param>
    /// <param name="terms">Weights or sensitivities, in the unit of the result over that of the estimate.</param>
    public static Estimate Linear(double value, params ReadOnlySpan<(double Sensitivity, Estimate Estimate)> terms)
    {
        if (terms.Length == 2)
            return Linear(value, terms[0].Sensitivity, terms[0].Estimate, terms[1].Sensitivity, terms[1].Estimate);
        var count = 0;
        foreach (var (_, e) in terms) count += e.Contributions.Length;
        var all = ImmutableArray.CreateBuilder<Contribution>(count);
        foreach (var (sensitivity, e) in terms)
        {
            foreach (var c in e.Contributions) all.Add(c.Times(sensitivity));
        }
        return new(value, all.MoveToImmutable());
    }

    /// <summary>Covariance of two estimates: the sum over the sources they share (JCGM 100:2008, F.1.2.3). In the unit of one times that of the other: in units of their product.</summary>
    public static double Covariance(Estimate a, Estimate b)
    {
        var sum = 0.0;
        for (int i = 0, j = 0; i < a.Contributions.Length && j < b.Contributions.Length;)
        {
            var order = string.CompareOrdinal(a.Contributions[i].Source, b.Contributions[j].Source);
            if (order == 0) sum += a.Contributions[i++].Amount * b.Contributions[j++].Amount;
            else if (order < 0) i++;
            else j++;
        }
        return sum;
    }

    /// <summary>Correlation coefficient of two estimates, -1 to 1; 0 where one of them is without doubt, no unit.</summary>
    public static double Correlation(Estimate a, Estimate b)
    {
        var scale = a.StandardUncertainty * b.StandardUncertainty;
        return scale == 0 ? 0 : Math.Clamp(Covariance(a, b) / scale, -1, 1);
    }

    /// <summary>Merge of two sorted lists, the common case, without a sort.</summary>
    private static Estimate Linear(double value, double ca, Estimate a, double cb, Estimate b)
    {
        var merged = ImmutableArray.CreateBuilder<Contribution>(a.Contributions.Length + b.Contributions.Length);
        int i = 0, j = 0;
        while (i < a.Contributions.Length || j < b.Contributions.Length)
        {
            var order = i == a.Contributions.Length ? 1
                : j == b.Contributions.Length ? -1
                : string.CompareOrdinal(a.Contributions[i].Source, b.Contributions[j].Source);
            if (order == 0) merged.Add(a.Contributions[i++].Times(ca).Plus(b.Contributions[j++].Times(cb)));
            else if (order < 0) merged.Add(a.Contributions[i++].Times(ca));
            else merged.Add(b.Contributions[j++].Times(cb));
        }
        return new(value, merged.DrainToImmutable());
    }
}
