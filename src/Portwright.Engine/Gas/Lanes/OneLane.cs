namespace Portwright.Engine.Gas.Lanes;

/// <summary>One number at a time: the reference for the wider ones.</summary>
internal readonly unsafe struct OneLane(double value) : ILanes<OneLane>
{
    public static int Count => 1;

    public double Value { get; } = value;

    public static implicit operator OneLane(double value) => new(value);

    public static implicit operator double(OneLane lane) => lane.Value;

    public static OneLane All(double value) => new(value);

    public static OneLane Load(double* from) => new(*from);

    public void Store(double* to) => *to = Value;

    public static OneLane operator +(OneLane a, OneLane b) => new(a.Value + b.Value);

    public static OneLane operator -(OneLane a, OneLane b) => new(a.Value - b.Value);

    public static OneLane operator *(OneLane a, OneLane b) => new(a.Value * b.Value);

    public static OneLane operator /(OneLane a, OneLane b) => new(a.Value / b.Value);

    public static OneLane MultiplyAdd(OneLane a, OneLane b, OneLane c) => new(Math.FusedMultiplyAdd(a.Value, b.Value, c.Value));

    public static OneLane Min(OneLane a, OneLane b) => new(double.MinNative(a.Value, b.Value));

    public static OneLane Max(OneLane a, OneLane b) => new(double.MaxNative(a.Value, b.Value));

    public static OneLane Abs(OneLane a) => new(Math.Abs(a.Value));

    public static OneLane Sqrt(OneLane a) => new(Math.Sqrt(a.Value));

    public static OneLane Exp(OneLane a) => new(Math.Exp(a.Value));

    public static OneLane Log(OneLane a) => new(Math.Log(a.Value));

    public static OneLane Choose(OneLane test, OneLane ifAboveZero, OneLane otherwise) => test.Value > 0 ? ifAboveZero : otherwise;

    public double Greatest() => Value;

    public double Least() => Value;
}
