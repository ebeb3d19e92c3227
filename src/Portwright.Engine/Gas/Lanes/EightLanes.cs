using System.Runtime.Intrinsics;

namespace Portwright.Engine.Gas.Lanes;

/// <summary>Eight numbers at a time, in vectors of 512 bits.</summary>
internal readonly unsafe struct EightLanes(Vector512<double> value) : ILanes<EightLanes>
{
    public static int Count => 8;

    public Vector512<double> Value { get; } = value;

    public static EightLanes All(double value) => new(Vector512.Create(value));

    public static EightLanes Load(double* from) => new(Vector512.Load(from));

    public void Store(double* to) => Value.Store(to);

    public static EightLanes operator +(EightLanes a, EightLanes b) => new(a.Value + b.Value);

    public static EightLanes operator -(EightLanes a, EightLanes b) => new(a.Value - b.Value);

    public static EightLanes operator *(EightLanes a, EightLanes b) => new(a.Value * b.Value);

    public static EightLanes operator /(EightLanes a, EightLanes b) => new(a.Value / b.Value);

    public static EightLanes MultiplyAdd(EightLanes a, EightLanes b, EightLanes c) => new(Vector512.FusedMultiplyAdd(a.Value, b.Value, c.Value));

    public static EightLanes Min(EightLanes a, EightLanes b) => new(Vector512.MinNative(a.Value, b.Value));

    public static EightLanes Max(EightLanes a, EightLanes b) => new(Vector512.MaxNative(a.Value, b.Value));

    public static EightLanes Abs(EightLanes a) => new(Vector512.Abs(a.Value));

    public static EightLanes Sqrt(EightLanes a) => new(Vector512.Sqrt(a.Value));

    public static EightLanes Exp(EightLanes a) => new(Vector512.Exp(a.Value));

    public static EightLanes Log(EightLanes a) => new(Vector512.Log(a.Value));

    public static EightLanes Choose(EightLanes test, EightLanes ifAboveZero, EightLanes otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.GreaterThan(test.Value, Vector512<double>.Zero), ifAboveZero.Value, otherwise.Value));

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
