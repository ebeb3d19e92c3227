using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace Portwright.Figures.Tests;

/// <summary>Reads the words of a PDF the way a search does: glyphs back to letters by the font's own ToUnicode table (ISO 32000-1, 9.10).</summary>
internal static partial class PdfWords
{
    public static string Of(byte[] pdf)
    {
        var objects = Objects(pdf);
        var words = new StringBuilder();
        var fonts = new Dictionary<int, Dictionary<int, string>>();
        foreach (var (_, body, stream) in objects.Where(o => o.Stream is not null && !o.Body.Contains("/Length1", StringComparison.Ordinal)))
        {
            var content = Encoding.Latin1.GetString(stream!);
            if (!content.Contains(" Tf", StringComparison.Ordinal)) continue;
            Dictionary<int, string> letters = [];
            foreach (Match m in Operators().Matches(content))
            {
                if (m.Groups["font"].Success)
                {
                    var font = int.Parse(m.Groups["font"].Value, CultureInfo.InvariantCulture);
                    if (!fonts.TryGetValue(font, out letters!)) fonts[font] = letters = Letters(objects, font);
                    words.Append('\n');
                }
                else
                {
                    var hex = m.Groups["hex"].Value;
                    for (var i = 0; i + 4 <= hex.Length; i += 4) words.Append(letters.GetValueOrDefault(Hex(hex.Substring(i, 4)), "?"));
                }
            }
        }

        return words.ToString();
    }

    public static string Raw(byte[] pdf) => Encoding.Latin1.GetString(pdf);

    private static Dictionary<int, string> Letters(List<(int Number, string Body, byte[]? Stream)> objects, int font)
    {
        var reference = Regex.Match(objects.Single(o => o.Number == font).Body, @"/ToUnicode (\d+) 0 R");
        var map = Encoding.Latin1.GetString(objects.Single(o => o.Number == int.Parse(reference.Groups[1].Value, CultureInfo.InvariantCulture)).Stream!);
        var letters = new Dictionary<int, string>();
        foreach (Match block in Regex.Matches(map, @"beginbfchar(.*?)endbfchar", RegexOptions.Singleline))
        {
            foreach (Match m in Regex.Matches(block.Groups[1].Value, @"<(\w{4})>\s*<(\w+)>"))
                letters[Hex(m.Groups[1].Value)] = Text(m.Groups[2].Value);
        }

        foreach (Match block in Regex.Matches(map, @"beginbfrange(.*?)endbfrange", RegexOptions.Singleline))
        {
            foreach (Match m in Regex.Matches(block.Groups[1].Value, @"<(\w{4})>\s*<(\w{4})>\s*<(\w{4})>"))
            {
                for (var g = Hex(m.Groups[1].Value); g <= Hex(m.Groups[2].Value); g++)
                    letters[g] = ((char)(Hex(m.Groups[3].Value) + g - Hex(m.Groups[1].Value))).ToString();
            }
        }

        return letters;
    }

    private static List<(int Number, string Body, byte[]? Stream)> Objects(byte[] pdf)
    {
        var text = Raw(pdf);
        var found = new List<(int, string, byte[]?)>();
        foreach (Match m in Regex.Matches(text, @"(?<=\n)(\d+) 0 obj\n"))
        {
            var end = text.IndexOf("endobj", m.Index, StringComparison.Ordinal);
            var start = m.Index + m.Length;
            var stream = text.IndexOf("stream\n", start, StringComparison.Ordinal);
            if (stream < 0 || stream > end)
            {
                found.Add((int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), text[start..end], null));
                continue;
            }

            var body = text[start..stream];
            var length = int.Parse(Regex.Match(body, @"/Length (\d+)").Groups[1].Value, CultureInfo.InvariantCulture);
            var bytes = pdf.AsSpan(stream + 7, length).ToArray();
            if (body.Contains("FlateDecode", StringComparison.Ordinal))
            {
                using var zlib = new ZLibStream(new MemoryStream(bytes), CompressionMode.Decompress);
                using var plain = new MemoryStream();
                zlib.CopyTo(plain);
                bytes = plain.ToArray();
            }

            found.Add((int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), body, bytes));
        }

        return found;
    }

    private static int Hex(string hex) => int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static string Text(string hex) => Encoding.BigEndianUnicode.GetString(Convert.FromHexString(hex));

    [GeneratedRegex(@"/F(?<font>\d+) [\d.]+ Tf|<(?<hex>[0-9A-Fa-f]+)>")]
    private static partial Regex Operators();
}
