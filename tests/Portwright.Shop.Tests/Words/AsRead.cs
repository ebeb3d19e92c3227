using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Words;

internal static class AsRead
{
    /// <summary>The sentence as a reader in inches sees it.</summary>
    public static string Us(this Sentence sentence) => sentence.In(UnitSystem.UsCustomary);
}
