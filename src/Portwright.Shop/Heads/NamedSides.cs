using Portwright.Shop.Record;

namespace Portwright.Shop.Heads;

/// <summary>Sections that were typed by the names of their sides: turning a port over in the drawing leaves them, and says so.</summary>
public static class NamedSides
{
    /// <summary>One sentence; empty where no section of these ports tells its sides apart.</summary>
    public static string Of(Ledger ledger, IReadOnlySet<Guid> ports)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(ports);
        var named = ledger.All<Section>()
            .Where(s => TellsSides(s.Fact) && ledger.Find<Cut>(s.Fact.Cut) is { Fact: var cut } && ports.Contains(cut.Port))
            .Select(s => $"{ledger.Get<Port>(ledger.Get<Cut>(s.Fact.Cut).Fact.Port).Fact.Name} {ledger.Get<Station>(s.Fact.Station).Fact.Letter}")
            .Distinct().ToList();
        return named.Count == 0 ? ""
            : $"Sections typed with a centre side and a cylinder-wall side keep them: {string.Join(", ", named)}. Where one was traced as seen, measure it again.";
    }

    private static bool TellsSides(Section section) =>
        section.Form is SectionForm.Traced or SectionForm.Template || section.CornerRadii is { Count: 4 } || (section.Form == SectionForm.Rectangle && section.Readings.Count == 6);
}
