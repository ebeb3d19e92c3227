using System.Runtime.Intrinsics;

namespace Portwright.Engine.Gas.Lanes;

/// <summary>Four numbers at a time, in vectors of 256 bits.</summary>
internal readonly unsafe struct FourLanes(Vector256<double> value) : ILanes<FourLanes>
{
    public static int Count => 4;

    public Vector256<double> Value { get; } = value;

    public static FourLanes All(double value) => new(Vector256.Create(value));

    public static FourLanes Load(double* from) => new(Vector256.Load(from));

    public void Store(double* to) => Value.Store(to);

    public static FourLanes operator +(FourLanes a, FourLanes b) => new(a.Value + b.Value);

    public static FourLanes operator -(FourLanes a, FourLanes b) => new(a.Value - b.Value);

    public static FourLanes operator *(FourLanes a, FourLanes b) => new(a.Value * b.Value);

    public static FourLanes operator /(FourLanes a, FourLanes b) => new(a.Value / b.Value);

    public static FourLanes MultiplyAdd(FourLanes a, FourLanes b, FourLanes c) => new(Vector256.FusedMultiplyAdd(a.Value, b.Value, c.Value));

    public static FourLanes Min(FourLanes a, FourLanes b) => new(Vector256.MinNative(a.Value, b.Value));

    public static FourLanes Max(FourLanes a, FourLanes b) => new(Vector256.MaxNative(a.Value, b.Value));

    public static FourLanes Abs(FourLanes a) => new(Vector256.Abs(a.Value));

    public static FourLanes Sqrt(FourLanes a) => new(Vector256.Sqrt(a.Value));

    public static FourLanes Exp(FourLanes a) => new(Vector256.Exp(a.Value));

    public static FourLanes Log(FourLanes a) => new(Vector256.Log(a.Value));

    public static FourLanes Choose(FourLanes test, FourLanes ifAboveZero, FourLanes otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.GreaterThan(test.Value, Vector256<double>.Zero), ifAboveZero.Value, otherwise.Value));

    public double Greatest()
    {
        var greatest = Value[0];
        for (var i = 1; i < Count; i++) greatest = Math.Max(greatest, Value[i]);
        return greatest;
    }

    public double Least()
    {
        var least = Value[0];
        for (var i = 1; i < Count; i++) least = Math.Min(least, Value[i]);
        return least;
    }
}
