using System.Buffers.Binary;
using System.IO.Compression;

namespace Portwright.Figures;

/// <summary>Unpacks a WOFF 1.0 file (W3C Recommendation, 2012) to the OpenType font inside, which a PDF can take a subset of.</summary>
internal static class Woff
{
    private const int WoffHeader = 44, WoffEntry = 20, SfntHeader = 12, SfntEntry = 16;

    /// <exception cref="InvalidDataException">Not a WOFF file.</exception>
    public static byte[] ToSfnt(byte[] woff)
    {
        if (woff.Length < WoffHeader || BinaryPrimitives.ReadUInt32BigEndian(woff) != 0x774F4646) throw new InvalidDataException("Not a WOFF font.");
        var tables = BinaryPrimitives.ReadUInt16BigEndian(woff.AsSpan(12));
        var sfnt = new byte[BinaryPrimitives.ReadUInt32BigEndian(woff.AsSpan(16))];
        woff.AsSpan(4, 4).CopyTo(sfnt);
        BinaryPrimitives.WriteUInt16BigEndian(sfnt.AsSpan(4), tables);
        var power = (int)Math.Log2(tables);
        BinaryPrimitives.WriteUInt16BigEndian(sfnt.AsSpan(6), (ushort)(16 << power));
        BinaryPrimitives.WriteUInt16BigEndian(sfnt.AsSpan(8), (ushort)power);
        BinaryPrimitives.WriteUInt16BigEndian(sfnt.AsSpan(10), (ushort)(16 * tables - (16 << power)));

        var to = SfntHeader + SfntEntry * tables;
        for (var i = 0; i < tables; i++)
        {
            var entry = woff.AsSpan(WoffHeader + WoffEntry * i, WoffEntry);
            var from = (int)BinaryPrimitives.ReadUInt32BigEndian(entry[4..]);
            var packed = (int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
            var length = (int)BinaryPrimitives.ReadUInt32BigEndian(entry[12..]);
            var table = sfnt.AsSpan(SfntHeader + SfntEntry * i, SfntEntry);
            entry[..4].CopyTo(table);
            entry.Slice(16, 4).CopyTo(table[4..]);
            BinaryPrimitives.WriteUInt32BigEndian(table[8..], (uint)to);
            BinaryPrimitives.WriteUInt32BigEndian(table[12..], (uint)length);
            if (packed == length)
            {
                woff.AsSpan(from, length).CopyTo(sfnt.AsSpan(to));
            }
            else
            {
                using var zlib = new ZLibStream(new MemoryStream(woff, from, packed), CompressionMode.Decompress);
                zlib.ReadExactly(sfnt.AsSpan(to, length));
            }

            to += (length + 3) & ~3;
        }

        return sfnt;
    }
}
