using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace Portwright.Shop.Tests.Conventions;

/// <summary>Steps through compiled code from one instruction to the next (ECMA-335, partition III).</summary>
internal static class Instruction
{
    private static readonly Dictionary<ushort, OperandType> Operands = typeof(OpCodes).GetFields()
        .Select(f => (OpCode)f.GetValue(null)!).ToDictionary(c => (ushort)c.Value, c => c.OperandType);

    /// <summary>Reads one; gives what it names, or null where it names nothing.</summary>
    public static EntityHandle? Next(ref BlobReader code)
    {
        ushort value = code.ReadByte();
        // 0xfe begins an instruction of two bytes.
        if (value == 0xfe) value = (ushort)(value << 8 | code.ReadByte());
        switch (Operands[value])
        {
            case OperandType.InlineNone:
                return null;
            case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                code.Offset += 1;
                return null;
            case OperandType.InlineVar:
                code.Offset += 2;
                return null;
            case OperandType.InlineI8 or OperandType.InlineR:
                code.Offset += 8;
                return null;
            case OperandType.InlineSwitch:
                var ways = code.ReadInt32();
                code.Offset += 4 * ways;
                return null;
            case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                return MetadataTokens.EntityHandle(code.ReadInt32());
            default:
                code.Offset += 4;
                return null;
        }
    }
}
