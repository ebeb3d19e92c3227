namespace Portwright.Engine.Gas.Lanes;

/// <summary>
/// A few numbers worked on side by side, as many as the machine's vectors hold. Kernels are written once over this and run with one, four or
/// eight numbers; the instance with one number is the reference the others are tested against.
/// </summary>
/// <remarks>
/// Min and Max do not promise what happens with a number that is not one: that check would cost 5 percent, and the kernels never need it.
/// </remarks>
internal unsafe interface ILanes<T>
    where T : struct, ILanes<T>
{
    static abstract int Count { get; }

    static abstract T All(double value);

    static abstract T Load(double* from);

    void Store(double* to);

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    /// <summary>a b + c, rounded once.</summary>
    static abstract T MultiplyAdd(T a, T b, T c);

    /// <summary>c - a b, rounded once.</summary>
    static abstract T LessProduct(T a, T b, T c);

    static abstract T Min(T a, T b);

    static abstract T Max(T a, T b);

    static abstract T Abs(T a);

    static abstract T Sqrt(T a);

    static abstract T Exp(T a);

    static abstract T Log(T a);

    /// <summary>In each lane the one value where the test is above zero, the other where it is not.</summary>
    static abstract T Choose(T test, T ifAboveZero, T otherwise);

    /// <summary>The greatest of the lanes.</summary>
    static abstract double Greatest(T a);

    /// <summary>The least of the lanes.</summary>
    static abstract double Least(T a);
}
