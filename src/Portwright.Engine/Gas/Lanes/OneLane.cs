using System.Runtime.CompilerServices;

namespace Portwright.Engine.Gas.Lanes;

/// <summary>One number at a time: the reference for the wider ones.</summary>
internal readonly unsafe struct OneLane : ILanes<OneLane>
{
    private readonly double _value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private OneLane(double value) => _value = value;

    public static int Count => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator OneLane(double value) => new(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator double(OneLane lane) => lane._value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane All(double value) => new(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Load(double* from) => new(*from);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(double* to) => *to = _value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator +(OneLane a, OneLane b) => new(a._value + b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator -(OneLane a, OneLane b) => new(a._value - b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator *(OneLane a, OneLane b) => new(a._value * b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator /(OneLane a, OneLane b) => new(a._value / b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane MultiplyAdd(OneLane a, OneLane b, OneLane c) => new(Math.FusedMultiplyAdd(a._value, b._value, c._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane LessProduct(OneLane a, OneLane b, OneLane c) => new(Math.FusedMultiplyAdd(-a._value, b._value, c._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Min(OneLane a, OneLane b) => new(double.MinNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Max(OneLane a, OneLane b) => new(double.MaxNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Abs(OneLane a) => new(Math.Abs(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Sqrt(OneLane a) => new(Math.Sqrt(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Exp(OneLane a) => new(Math.Exp(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Log(OneLane a) => new(Math.Log(a._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Choose(OneLane test, OneLane ifAboveZero, OneLane otherwise) => test._value > 0 ? ifAboveZero : otherwise;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Greatest(OneLane a) => a._value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Least(OneLane a) => a._value;
}
