using Portwright.Geometry.Views;
using Portwright.Shop.Record;

namespace Portwright.Web.Air;

/// <summary>What of the port is looked at, kept in the address: so that back is back, and a link shows another what one sees.</summary>
/// <param name="Show">Which observations: see <see cref="Shown"/>.</param>
/// <param name="Place">The bearing touched, as the record keeps it; <c>middle</c>, <c>out</c> (the ball taken out), or nothing.</param>
public sealed record AirState(Guid Port, int? Cut, string? Station, string Show, SeenFrom From, Lying Lying, string? Place)
{
    /// <summary>What can be looked at and recorded at a station, in the order a porter does it.</summary>
    public static IReadOnlyList<(string Key, string Words)> Shown { get; } =
        [("shape", "shape"), ("speeds", "air speeds"), ("balls", "balls"), ("flags", "flags"), ("metal", "metal")];

    public static AirState Read(Guid port, int? cut, string? station, string? show, string? from, string? lying, string? place) => new(
        port,
        cut,
        station,
        Shown.Any(s => s.Key == show) ? show! : "shape",
        from == "chamber" ? SeenFrom.Chamber : SeenFrom.Flange,
        lying == "inverted" ? Lying.Inverted : Lying.Upright,
        place);

    public string Href
    {
        get
        {
            var query = new List<string>();
            void Add(string name, string? value)
            {
                if (!string.IsNullOrEmpty(value))
                {
                    query.Add($"{name}={Uri.EscapeDataString(value)}");
                }
            }

            Add("station", Station);
            Add("show", Show == "shape" ? null : Show);
            Add("from", From == SeenFrom.Chamber ? "chamber" : null);
            Add("lying", Lying == Lying.Inverted ? "inverted" : null);
            Add("place", Place);
            var path = Cut is { } number ? FormattableString.Invariant($"/port/{Port}/cut/{number}/air") : $"/port/{Port}/air";
            return query.Count == 0 ? path : $"{path}?{string.Join('&', query)}";
        }
    }

    /// <summary>The view of a port of that head.</summary>
    public View View(Port port, Head head) => new(From, Lying, port.Mirrored, head.Name, port.Cylinder);

    /// <summary>The bearing touched; null in the middle, with the ball out, or where nothing was touched.</summary>
    public double? Bearing => double.TryParse(Place, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var hours) && hours is > 0 and <= 12 ? hours : null;

    public bool Touched => Bearing is not null || Place is "middle" or "out";

    /// <summary>The next station's letter for a new one.</summary>
    public static string NextLetter(IEnumerable<string> used)
    {
        var taken = used.ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Enumerable.Range('A', 26).Select(c => ((char)c).ToString()).FirstOrDefault(l => !taken.Contains(l)) ?? "";
    }
}
