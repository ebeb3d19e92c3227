using System.Collections.Immutable;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace Portwright.Mutants;

/// <summary>An instruction of a method's body.</summary>
/// <param name="Offset">From the body's first instruction.</param>
/// <param name="Operand">Offset of its operand.</param>
internal readonly record struct Instruction(OpCode Code, int Offset, int Operand);

/// <summary>Instructions of a body, by the table of opcodes of ECMA-335, partition III.</summary>
internal static class Code
{
    private static readonly Dictionary<short, OpCode> Known = typeof(OpCodes).GetFields().Select(f => f.GetValue(null)).OfType<OpCode>().ToDictionary(o => o.Value);

    public static IReadOnlyList<Instruction> Of(ImmutableArray<byte> il)
    {
        var all = new List<Instruction>();
        for (var at = 0; at < il.Length;)
        {
            var start = at;
            var code = il[at] == 0xFE ? Known[(short)(0xFE00 | il[at + 1])] : Known[il[at]];
            at += code.Size;
            all.Add(new Instruction(code, start, at));
            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(il.AsSpan(at, 4)),
                _ => 4,
            };
        }

        return all;
    }

    public static EntityHandle Token(ImmutableArray<byte> il, Instruction i) => MetadataTokens.EntityHandle(BitConverter.ToInt32(il.AsSpan(i.Operand, 4)));
}
