using System.Security.Cryptography;

namespace Portwright.Store;

/// <summary>A picture or a short clip kept beside the journal.</summary>
/// <param name="Content">SHA-256 of the bytes, lower-case hexadecimal; the picture's name in the record.</param>
/// <param name="MediaType"><c>image/jpeg</c>, <c>image/png</c> or <c>image/webp</c>; a clip <c>video/mp4</c>, <c>video/quicktime</c> or <c>video/webm</c>.</param>
public sealed record Attachment(string Content, string MediaType, byte[] Bytes)
{
    /// <summary>The largest picture or clip the record takes: 20 MB, 20,000,000 bytes.</summary>
    public const int LargestSize = 20_000_000;

    /// <summary>The name of these bytes in the record.</summary>
    public static string ContentOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>What the first bytes say the picture or clip is, whatever its name says; null when it is none the record keeps.</summary>
    /// <remarks>
    /// JPEG: ISO/IEC 10918-1, start-of-image marker followed by another marker. PNG: ISO/IEC 15948, signature of 8 bytes and the IHDR
    /// chunk. WebP: RFC 9649, a RIFF form of type WEBP. MP4 and QuickTime: ISO/IEC 14496-12, a file type box first, whose brand tells the
    /// two apart. WebM: RFC 8794, the EBML header, with the document type webm near its start.
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

        if (bytes[4..8].SequenceEqual("ftyp"u8))
        {
            return bytes[8..12].SequenceEqual("qt  "u8) ? "video/quicktime" : IsPictureBrand(bytes[8..12]) ? null : "video/mp4";
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x1A, 0x45, 0xDF, 0xA3]) && bytes[..Math.Min(bytes.Length, 64)].IndexOf("webm"u8) > 0)
        {
            return "video/webm";
        }

        return bytes.StartsWith("RIFF"u8) && bytes[8..12].SequenceEqual("WEBP"u8) ? "image/webp" : null;
    }

    // Still pictures in the same container, which few browsers show.
    private static bool IsPictureBrand(ReadOnlySpan<byte> brand) =>
        brand.SequenceEqual("heic"u8) || brand.SequenceEqual("heix"u8) || brand.SequenceEqual("mif1"u8) || brand.SequenceEqual("avif"u8);

    /// <exception cref="RecordProblem">Too large, or not a picture the record keeps.</exception>
    internal static Attachment Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > LargestSize)
        {
            throw new RecordProblem(
                RecordProblemKind.Refused,
                "The file is larger than 20 MB; it was not saved.",
                "Make it smaller, take it again at a lower resolution, or cut the clip to the seconds that show it.");
        }

        var mediaType = MediaTypeOf(bytes) ?? throw new RecordProblem(
            RecordProblemKind.Refused,
            "The file is not a JPEG, PNG or WebP picture, nor an MP4, MOV or WebM clip; it was not saved.",
            "Choose a photograph, or export it as JPEG first.");
        return new Attachment(ContentOf(bytes), mediaType, bytes.ToArray());
    }
}
