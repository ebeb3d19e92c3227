using System.Security.Cryptography;

namespace Portwright.Store;

/// <summary>A picture kept beside the journal.</summary>
/// <param name="Content">SHA-256 of the bytes, lower-case hexadecimal; the picture's name in the record.</param>
/// <param name="MediaType"><c>image/jpeg</c>, <c>image/png</c> or <c>image/webp</c>.</param>
public sealed record Attachment(string Content, string MediaType, byte[] Bytes)
{
    /// <summary>The largest picture the record takes: 20 MB, 20,000,000 bytes.</summary>
    public const int LargestSize = 20_000_000;

    /// <summary>The name of these bytes in the record.</summary>
    public static string ContentOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>What the first bytes say the picture is, whatever its name says; null when it is none of the three.</summary>
    /// <remarks>
    /// JPEG: ISO/IEC 10918-1, start-of-image marker followed by another marker. PNG: ISO/IEC 15948, signature of 8 bytes and the IHDR
    /// chunk. WebP: RFC 9649, a RIFF form of type WEBP.
    /// </remarks>
    public static string? MediaTypeOf(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 16)
        {
            return null;
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]))
        {
            return "image/jpeg";
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A])
            && bytes[12..16].SequenceEqual("IHDR"u8))
        {
            return "image/png";
        }

        return bytes.StartsWith("RIFF"u8) && bytes[8..12].SequenceEqual("WEBP"u8) ? "image/webp" : null;
    }

    /// <exception cref="RecordProblem">Too large, or not a picture the record keeps.</exception>
    internal static Attachment Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > LargestSize)
        {
            throw new RecordProblem(
                RecordProblemKind.Refused,
                "The picture is larger than 20 MB; it was not saved.",
                "Make it smaller, or take it again at a lower resolution.");
        }

        var mediaType = MediaTypeOf(bytes) ?? throw new RecordProblem(
            RecordProblemKind.Refused,
            "The file is not a JPEG, PNG or WebP picture; it was not saved.",
            "Choose a photograph, or export it as JPEG first.");
        return new Attachment(ContentOf(bytes), mediaType, bytes.ToArray());
    }
}
