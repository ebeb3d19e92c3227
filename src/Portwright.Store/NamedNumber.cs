using System.Security.Cryptography;
using System.Text;

namespace Portwright.Store;

/// <summary>Numbers of entries that follow from what they are about, so that saving the same thing again finds it there.</summary>
internal static class NamedNumber
{
    /// <summary>The same number for the same words, everywhere: RFC 9562 version 8, 122 bits of a SHA-256 with version and variant set.</summary>
    public static Guid Of(string words)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(words)).AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
