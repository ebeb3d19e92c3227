using System.Globalization;
using System.Reflection.Emit;

namespace Portwright.Mutants;

/// <summary>How figures, counts, comparisons and guards are moved, byte for byte.</summary>
internal static class Moved
{
    /// <summary>Both ways a threshold or a doubt moves: too small a step would be lost in a port's noise.</summary>
    private static readonly double[] Ways = [1.25, 0.8];

    // Comparisons of real numbers: equality has no measure, so the comparison is turned round.
    private static readonly Dictionary<OpCode, OpCode> Turned = Both(
        (OpCodes.Blt, OpCodes.Bgt), (OpCodes.Blt_S, OpCodes.Bgt_S), (OpCodes.Blt_Un, OpCodes.Bgt_Un), (OpCodes.Blt_Un_S, OpCodes.Bgt_Un_S),
        (OpCodes.Ble, OpCodes.Bge), (OpCodes.Ble_S, OpCodes.Bge_S), (OpCodes.Ble_Un, OpCodes.Bge_Un), (OpCodes.Ble_Un_S, OpCodes.Bge_Un_S),
        (OpCodes.Clt, OpCodes.Cgt), (OpCodes.Clt_Un, OpCodes.Cgt_Un));

    // Comparisons of counts: the boundary goes over to the other side.
    private static readonly Dictionary<OpCode, OpCode> Neighbour = Both(
        (OpCodes.Blt, OpCodes.Ble), (OpCodes.Blt_S, OpCodes.Ble_S), (OpCodes.Bgt, OpCodes.Bge), (OpCodes.Bgt_S, OpCodes.Bge_S),
        (OpCodes.Blt_Un, OpCodes.Ble_Un), (OpCodes.Blt_Un_S, OpCodes.Ble_Un_S), (OpCodes.Bgt_Un, OpCodes.Bge_Un), (OpCodes.Bgt_Un_S, OpCodes.Bge_Un_S));

    private static readonly Dictionary<OpCode, OpCode> Guard = Both((OpCodes.Brtrue, OpCodes.Brfalse), (OpCodes.Brtrue_S, OpCodes.Brfalse_S));

    /// <summary>Every change of one instruction of a body: offset from its first instruction, the bytes, and what it is in words.</summary>
    /// <param name="guards">Whether plain yes-or-no guards are turned round too.</param>
    public static IEnumerable<(int At, byte[] Bytes, string What)> Of(Body body, int at, bool figuresStated, bool guards)
    {
        var i = body.Instructions[at];
        if (body.JumpsBack(at))
        {
            // The end of a loop is no threshold.
            yield break;
        }

        if (i.Code == OpCodes.Ldc_R8 && IsThreshold(body, at, figuresStated))
        {
            foreach (var way in Ways)
            {
                yield return (i.Operand, BitConverter.GetBytes(body.Real(at) * way), (body.Makes(at + 1, "CutSuggestion") ? Metal.Reach + " " : "") + Invariant($"{body.Real(at):G6} is {body.Real(at) * way:G6}"));
            }
        }
        else if (body.KindAt(at - 1) == Kind.Real && Turned.TryGetValue(i.Code, out var turned))
        {
            yield return (i.Offset, Bytes(turned), $"{i.Code.Name} is {turned.Name}");
        }
        else if (body.KindAt(at - 1) == Kind.Whole)
        {
            if (Neighbour.TryGetValue(i.Code, out var neighbour))
            {
                yield return (i.Offset, Bytes(neighbour), $"{i.Code.Name} is {neighbour.Name}");
            }

            // Where no neighbour of the same size is, the comparison is turned round.
            if (Turned.TryGetValue(i.Code, out var round) && round.Size == 2)
            {
                yield return (i.Offset, Bytes(round), $"{i.Code.Name} is {round.Name}");
            }

            // A count against a number: the boundary goes over by its opcode to one side, by its number to the other.
            if ((Neighbour.ContainsKey(i.Code) || i.Code == OpCodes.Clt || i.Code == OpCodes.Cgt) && body.Whole(at - 1) is { } count && body.Instructions[at - 1].Code.OperandType == OperandType.InlineNone)
            {
                foreach (var other in Others(i.Code, count).Where(o => o is >= -1 and <= 8))
                {
                    yield return (body.Instructions[at - 1].Offset, [(byte)(OpCodes.Ldc_I4_0.Value + other)], Invariant($"the count {count} is {other}"));
                }
            }
        }
        else if (guards && Guard.TryGetValue(i.Code, out var guard) && body.CodeAt(at - 1) != OpCodes.Dup)
        {
            yield return (i.Offset, Bytes(guard), $"{i.Code.Name} is {guard.Name}");
        }
    }

    private static int[] Others(OpCode code, int count) => code.Size == 2 ? [count - 1, count + 1]
        : code.Name!.StartsWith("blt", StringComparison.Ordinal) || code.Name.StartsWith("bge", StringComparison.Ordinal) ? [count - 1] : [count + 1];

    /// <summary>Factors of units, of a circle and exponents are no thresholds; a figure stated as a constant or compared always is one.</summary>
    private static bool IsThreshold(Body body, int at, bool stated)
    {
        var figure = Math.Abs(body.Real(at));
        // Epsilons keep a quotient finite: where they lie says nothing of a port.
        if (figure is <= 1e-5 or >= 1e5 || !double.IsFinite(figure))
        {
            return false;
        }

        var next = body.CodeAt(at + 1);
        var isCompared = next is { } n && (Turned.ContainsKey(n) || body.Member(at + 1) is "Max" or "Min" or "Clamp");
        return (stated || isCompared || figure is not (0.5 or 1 or 2)) && figure is not (100 or 1000 or 0.0254 or 60)
            && body.Member(at + 1) != "Sqrt" && !Circles.Any(c => Math.Abs(figure / c - 1) < 1e-12);
    }

    private static readonly double[] Circles = [Math.PI, 2 * Math.PI, Math.PI / 2, Math.PI / 4, Math.PI / 180];

    private static byte[] Bytes(OpCode code) => code.Size == 1 ? [(byte)code.Value] : [0xFE, (byte)(code.Value & 0xFF)];

    private static Dictionary<OpCode, OpCode> Both(params (OpCode One, OpCode Other)[] pairs) =>
        pairs.SelectMany(p => new[] { (p.One, p.Other), (p.Other, p.One) }).ToDictionary(p => p.Item1, p => p.Item2);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
