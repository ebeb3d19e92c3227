namespace Portwright.Engine.Gas;

/// <summary>A pipe's sections along its centreline, cut into cells of equal length.</summary>
public sealed class PipeShape
{
    private PipeShape(double length, double[] faceAreas, double[] volumes) =>
        (Length, FaceAreas, Volumes) = (length, faceAreas, volumes);

    /// <summary>Length along the centreline, end corrections included, m.</summary>
    public double Length { get; }

    public int Cells => Volumes.Length;

    /// <summary>m.</summary>
    public double CellLength => Length / Cells;

    /// <summary>Section at each border of cells from the first end to the last, m2: one more than there are cells.</summary>
    public double[] FaceAreas { get; }

    /// <summary>Volume of each cell, m3: Simpson's rule over its length, exact for cylinders and cones.</summary>
    public double[] Volumes { get; }

    /// <summary>A pipe whose section (m2) is a function of the distance from its first end (m).</summary>
    /// <param name="length">m, above zero.</param>
    /// <param name="area">Section (m2) at a distance from the first end (m).</param>
    /// <exception cref="ArgumentOutOfRangeException">Length or a section is not above zero, or there are fewer than four cells.</exception>
    public static PipeShape Of(double length, int cells, Func<double, double> area)
    {
        Require.Positive(length, nameof(length), "m");
        Require.Between(cells, 4, 1_000_000, nameof(cells), "cells");
        var step = length / cells;
        double At(double position) => Require.Positive(area(position), nameof(area), "m2");
        var faces = Enumerable.Range(0, cells + 1).Select(i => At(i * step)).ToArray();
        var volumes = Enumerable.Range(0, cells).Select(i => step / 6 * (faces[i] + 4 * At((i + 0.5) * step) + faces[i + 1])).ToArray();
        return new(length, faces, volumes);
    }

    /// <param name="length">m, above zero.</param>
    /// <param name="diameter">m, above zero.</param>
    public static PipeShape Straight(double length, int cells, double diameter) => Cone(length, cells, diameter, diameter);

    /// <summary>A round pipe whose diameter (m) goes in a straight line from one end to the other.</summary>
    /// <param name="length">m, above zero.</param>
    /// <param name="firstDiameter">m, above zero.</param>
    /// <param name="lastDiameter">m, above zero.</param>
    public static PipeShape Cone(double length, int cells, double firstDiameter, double lastDiameter) =>
        Of(length, cells, x =>
        {
            var diameter = firstDiameter + (lastDiameter - firstDiameter) * x / length;
            return Math.PI / 4 * diameter * diameter;
        });
}
