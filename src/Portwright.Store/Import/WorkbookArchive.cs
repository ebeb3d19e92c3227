using System.Globalization;
using System.IO.Compression;
using System.Xml;

namespace Portwright.Store.Import;

/// <summary>The archive a workbook comes in: unpacked under limits, and only the parts that hold cells.</summary>
internal static class WorkbookArchive
{
    /// <summary>An archive of the needed parts only, each looked through as XML without a document type.</summary>
    /// <param name="lookAtSheet">Called with each sheet's path and content.</param>
    internal static MemoryStream Clean(byte[] bytes, string name, Action<string, Stream> lookAtSheet)
    {
        var cleaned = new MemoryStream();
        using (var packed = new ZipArchive(new MemoryStream(bytes, false), ZipArchiveMode.Read))
        using (var clean = new ZipArchive(cleaned, ZipArchiveMode.Create, true))
        {
            if (packed.Entries.Count > ImportLimits.Parts)
                throw new UnreadableFileException(string.Create(CultureInfo.InvariantCulture, $"{name} is packed from {packed.Entries.Count:#,0} parts, more than the {ImportLimits.Parts:#,0} read here. Save the sheet again as CSV."));
            if (!packed.Entries.Any(e => e.FullName.Equals("xl/workbook.xml", StringComparison.OrdinalIgnoreCase)))
                throw NotAWorkbook(packed, name);
            var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
            long unpacked = 0;
            foreach (var entry in packed.Entries.Where(e => IsNeeded(e.FullName) && seen.Add(e.FullName)))
            {
                if (entry.IsEncrypted) throw new UnreadableFileException($"{name} is locked with a password. Save it without one, or as CSV.");
                using var part = Unpack(entry, ref unpacked, name);
                if (IsSheet(entry.FullName)) lookAtSheet(entry.FullName, part);
                else WellFormed(part);
                part.Position = 0;
                using var copy = clean.CreateEntry(entry.FullName, CompressionLevel.NoCompression).Open();
                part.CopyTo(copy);
            }
        }
        cleaned.Position = 0;
        return cleaned;
    }

    /// <summary>Which part holds the sheet of that name.</summary>
    internal static Dictionary<string, string> SheetPaths(Stream clean)
    {
        clean.Position = 0;
        using var archive = new ZipArchive(clean, ZipArchiveMode.Read, true);
        var targets = new Dictionary<string, string>(StringComparer.Ordinal);
        Each(archive, "xl/_rels/workbook.xml.rels", "Relationship", x =>
        {
            var target = x.GetAttribute("Target") ?? "";
            target = target.StartsWith('/') ? target[1..] : "xl/" + target;
            targets[x.GetAttribute("Id") ?? ""] = target;
        });
        var paths = new Dictionary<string, string>(StringComparer.Ordinal);
        Each(archive, "xl/workbook.xml", "sheet", x =>
        {
            var id = "";
            while (x.MoveToNextAttribute())
                if (x.LocalName == "id") id = x.Value;
            x.MoveToElement();
            if (targets.TryGetValue(id, out var target)) paths[x.GetAttribute("name") ?? ""] = target;
        });
        return paths;
    }

    /// <summary>No document type, no outside reference, no entity: any of them throws.</summary>
    internal static XmlReader SafeXml(Stream stream) => XmlReader.Create(stream, new XmlReaderSettings
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        MaxCharactersInDocument = ImportLimits.UnpackedBytes,
    });

    private static void Each(ZipArchive archive, string path, string element, Action<XmlReader> look)
    {
        var entry = archive.Entries.FirstOrDefault(e => e.FullName.Equals(path, StringComparison.OrdinalIgnoreCase));
        if (entry is null) return;
        using var stream = entry.Open();
        using var xml = SafeXml(stream);
        while (xml.Read())
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == element) look(xml);
    }

    private static void WellFormed(Stream part)
    {
        using var xml = SafeXml(part);
        while (xml.Read()) { }
    }

    // The size written in the archive may be a lie, so what comes out is counted.
    private static MemoryStream Unpack(ZipArchiveEntry entry, ref long unpacked, string name)
    {
        var part = new MemoryStream();
        using var stream = entry.Open();
        var buffer = new byte[64 * 1024];
        int read;
        while ((read = stream.Read(buffer)) > 0)
        {
            unpacked += read;
            if (unpacked > ImportLimits.UnpackedBytes)
                throw new UnreadableFileException($"{name} unpacks to more than {FileContent.Megabytes(ImportLimits.UnpackedBytes)} MB. Save only the sheet with the readings, as CSV.");
            part.Write(buffer, 0, read);
        }
        part.Position = 0;
        return part;
    }

    private static bool IsSheet(string path) =>
        path.StartsWith("xl/worksheets/", StringComparison.OrdinalIgnoreCase) && path.EndsWith(".xml", StringComparison.OrdinalIgnoreCase) && path.Count(c => c == '/') == 2;

    private static bool IsNeeded(string path) => IsSheet(path) || path.ToUpperInvariant() is
        "[CONTENT_TYPES].XML" or "_RELS/.RELS" or "XL/WORKBOOK.XML" or "XL/_RELS/WORKBOOK.XML.RELS" or "XL/SHAREDSTRINGS.XML" or "XL/STYLES.XML";

    private static UnreadableFileException NotAWorkbook(ZipArchive packed, string name) =>
        packed.GetEntry("content.xml") is not null ? new($"{name} is an OpenDocument file. Save it as .xlsx or CSV and choose that file.")
        : packed.Entries.Any(e => e.FullName.StartsWith("word/", StringComparison.OrdinalIgnoreCase)) ? new($"{name} is a text document, not a workbook. Copy the table into a spreadsheet and save it as .xlsx or CSV.")
        : packed.Entries.Any(e => e.FullName.Equals("xl/workbook.bin", StringComparison.OrdinalIgnoreCase)) ? new($"{name} is a binary workbook (.xlsb). Save it as .xlsx or CSV and choose that file.")
        : new($"{name} is an archive without a workbook in it. Take the sheet out of it, and choose that file.");
}
