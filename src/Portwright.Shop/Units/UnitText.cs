using System.Text;

namespace Portwright.Shop.Units;

/// <summary>Brings the many ways of writing a unit to one, without touching the case of its letters.</summary>
internal static class UnitText
{
    /// <summary>
    /// Without spaces, dots, middle dots and carets; superscripts as plain digits, both micro signs as u,
    /// every kind of inch mark as <c>"</c>, <c>°F</c> and <c>deg F</c> as <c>degF</c>.
    /// </summary>
    internal static string Fold(string text)
    {
        var kept = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            switch (c)
            {
                // 0.001" is the one spelling with a point in it; elsewhere a point is an abbreviation's.
                case '.' when i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]): kept.Append('.'); break;
                case '.' or '·' or '⋅' or '•' or '*' or '^' or '_' or '\u200B' or '\u00AD': break;
                case '²' or '₂': kept.Append('2'); break;
                case '³': kept.Append('3'); break;
                case 'µ' or 'μ': kept.Append('u'); break;
                case '”' or '“' or '″' or '„' or '˝' or '＂': kept.Append('"'); break;
                case '’' or '′' or '‘' or '\'' when i + 1 < text.Length && text[i + 1] == c: kept.Append('"'); i++; break;
                case '’' or '′' or '‘': kept.Append('\''); break;
                case '℃': kept.Append("degC"); break;
                case '℉': kept.Append("degF"); break;
                case '°' or 'º': kept.Append("deg"); break;
                case '⁄' or '∕' or '÷': kept.Append('/'); break;
                case '−' or '–' or '‐' or '‑': kept.Append('-'); break;
                default:
                    if (!char.IsWhiteSpace(c)) kept.Append(c);
                    break;
            }
        }
        return kept.ToString();
    }
}
