using Portwright.Geometry;
using Portwright.Geometry.Sections;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Sections;

/// <summary>What stands in a section, as it was typed, as the geometry wants it.</summary>
public static class IslandShape
{
    /// <summary>Its forms, and the numbers each wants.</summary>
    public static IReadOnlyList<(SectionForm Form, string Words)> Forms { get; } =
        [(SectionForm.Oval, "round or oval"), (SectionForm.Racetrack, "racetrack"), (SectionForm.Rectangle, "rectangle")];

    public static string Words(MetalInAirKind kind) => kind switch
    {
        MetalInAirKind.Stem => "stem",
        MetalInAirKind.Guide => "guide",
        MetalInAirKind.GuideBoss => "guide boss",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "unknown metal in the air"),
    };

    /// <summary>All of it, each where it stands; null where the numbers make none, with the sentence that says why and what to do.</summary>
    /// <param name="wall">The section's own wall line in the measured plane.</param>
    internal static IReadOnlyList<Island>? Of(IReadOnlyList<MetalInAir> inAir, Outline wall, out string problem)
    {
        List<Island> islands = [];
        foreach (var (metal, name) in inAir.Zip(Names(inAir)))
        {
            if (One(metal, name, wall, out problem) is not { } island) return null;
            if (!wall.Contains(island.Middle))
            {
                problem = $"The middle of the {name} lies outside the section. Look at how far it stands up from the floor and in from the cylinder-wall side.";
                return null;
            }

            if (islands.FirstOrDefault(i => i.Outline().Contains(island.Middle) || island.Outline().Contains(i.Middle)) is { } other)
            {
                problem = $"The {name} stands in the {other.Name}: that area would be taken off twice. Leave out the one inside, or type where each stands.";
                return null;
            }

            islands.Add(island);
        }

        problem = "";
        return islands;
    }

    private static Island? One(MetalInAir metal, string name, Outline wall, out string problem)
    {
        double[] r;
        double? up, @in;
        double onWall;
        try
        {
            r = [.. metal.Sizes.Select(t => t.Si(Dimension.Length))];
            (up, @in, onWall) = (metal.Up?.Si(Dimension.Length), metal.In?.Si(Dimension.Length), metal.OnWall?.Si(Dimension.Length) ?? 0);
        }
        catch (ArgumentException trouble)
        {
            problem = trouble.Message;
            return null;
        }

        SectionMeasure? shape = (metal.Form, r.Length) switch
        {
            (SectionForm.Oval, 1) => new RoundSection(r[0]),
            (SectionForm.Oval, 2) => new OvalSection(r[0], r[1]),
            (SectionForm.Racetrack, 2) => new RacetrackSection(r[0], r[1]),
            (SectionForm.Rectangle, 2 or 3) => new RectangleSection(r[0], r[1], CornerRadii.All(r.Length == 3 ? r[2] : 0)),
            _ => null,
        };
        if (shape is null)
        {
            problem = $"A {name} wants one diameter, or width and height, of a rectangle also a corner radius; there {(r.Length == 1 ? "is 1 number" : $"are {r.Length} numbers")}.";
            return null;
        }

        if (shape.Problem() is { } wrong)
        {
            problem = FormattableString.Invariant($"The {name}'s {wrong.Field} is {wrong.Value:0.######}. {wrong.Cure}");
            return null;
        }

        problem = "";
        var bounds = wall.Bounds;
        var hangs = metal.Kind == MetalInAirKind.GuideBoss;
        var y = up is { } u ? bounds.Bottom + u : hangs ? bounds.Top - r[Math.Min(1, r.Length - 1)] / 2 : (bounds.Bottom + bounds.Top) / 2;
        return new Island(name, shape, new(@in is { } i ? bounds.Left + i : (bounds.Left + bounds.Right) / 2, y), onWall);
    }

    /// <summary>A second guide boss is "guide boss 2": each of its numbers is named.</summary>
    private static IEnumerable<string> Names(IReadOnlyList<MetalInAir> inAir) => inAir.Select((m, i) =>
        inAir.Take(i).Count(o => o.Kind == m.Kind) is > 0 and var before ? $"{Words(m.Kind)} {before + 1}" : Words(m.Kind));
}
