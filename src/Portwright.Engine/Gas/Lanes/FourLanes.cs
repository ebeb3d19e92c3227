using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Portwright.Engine.Gas.Lanes;

/// <summary>Four numbers at a time, in vectors of 256 bits.</summary>
internal readonly unsafe struct FourLanes : ILanes<FourLanes>
{
    private readonly Vector256<double> _value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private FourLanes(Vector256<double> value) => _value = value;

    public static int Count => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes All(double value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Load(double* from) => new(Vector256.Load(from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(double* to) => _value.Store(to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator +(FourLanes a, FourLanes b) => new(a._value + b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator -(FourLanes a, FourLanes b) => new(a._value - b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator *(FourLanes a, FourLanes b) => new(a._value * b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator /(FourLanes a, FourLanes b) => new(a._value / b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes MultiplyAdd(FourLanes a, FourLanes b, FourLanes c) => new(Vector256.FusedMultiplyAdd(a._value, b._value, c._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes LessProduct(FourLanes a, FourLanes b, FourLanes c) =>
        new(Fma.IsSupported ? Fma.MultiplyAddNegated(a._value, b._value, c._value) : Vector256.FusedMultiplyAdd(-a._value, b._value, c._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Min(FourLanes a, FourLanes b) => new(Vector256.MinNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Max(FourLanes a, FourLanes b) => new(Vector256.MaxNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Abs(FourLanes a) => new(Vector256.Abs(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Sqrt(FourLanes a) => new(Vector256.Sqrt(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Exp(FourLanes a) => new(Vector256.Exp(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Log(FourLanes a) => new(Vector256.Log(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Choose(FourLanes test, FourLanes ifAboveZero, FourLanes otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.GreaterThan(test._value, Vector256<double>.Zero), ifAboveZero._value, otherwise._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Greatest(FourLanes a)
    {
        var two = Vector128.MaxNative(a._value.GetLower(), a._value.GetUpper());
        return double.MaxNative(two[0], two[1]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Least(FourLanes a)
    {
        var two = Vector128.MinNative(a._value.GetLower(), a._value.GetUpper());
        return double.MinNative(two[0], two[1]);
    }
}
