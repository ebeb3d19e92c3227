using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Portwright.Engine.Gas.Lanes;

/// <summary>Eight numbers at a time, in vectors of 512 bits.</summary>
internal readonly unsafe struct EightLanes : ILanes<EightLanes>
{
    private readonly Vector512<double> _value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private EightLanes(Vector512<double> value) => _value = value;

    public static int Count => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes All(double value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Load(double* from) => new(Vector512.Load(from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(double* to) => _value.Store(to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator +(EightLanes a, EightLanes b) => new(a._value + b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator -(EightLanes a, EightLanes b) => new(a._value - b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator *(EightLanes a, EightLanes b) => new(a._value * b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator /(EightLanes a, EightLanes b) => new(a._value / b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes MultiplyAdd(EightLanes a, EightLanes b, EightLanes c) => new(Vector512.FusedMultiplyAdd(a._value, b._value, c._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes LessProduct(EightLanes a, EightLanes b, EightLanes c) =>
        new(Avx512F.IsSupported ? Avx512F.FusedMultiplyAddNegated(a._value, b._value, c._value) : Vector512.FusedMultiplyAdd(-a._value, b._value, c._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Min(EightLanes a, EightLanes b) => new(Vector512.MinNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Max(EightLanes a, EightLanes b) => new(Vector512.MaxNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Abs(EightLanes a) => new(Vector512.Abs(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Sqrt(EightLanes a) => new(Vector512.Sqrt(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Exp(EightLanes a) => new(Vector512.Exp(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Log(EightLanes a) => new(Vector512.Log(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Choose(EightLanes test, EightLanes ifAboveZero, EightLanes otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.GreaterThan(test._value, Vector512<double>.Zero), ifAboveZero._value, otherwise._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Greatest(EightLanes a)
    {
        var four = Vector256.MaxNative(a._value.GetLower(), a._value.GetUpper());
        var two = Vector128.MaxNative(four.GetLower(), four.GetUpper());
        return double.MaxNative(two[0], two[1]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Least(EightLanes a)
    {
        var four = Vector256.MinNative(a._value.GetLower(), a._value.GetUpper());
        var two = Vector128.MinNative(four.GetLower(), four.GetUpper());
        return double.MinNative(two[0], two[1]);
    }
}
