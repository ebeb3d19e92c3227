using Portwright.Geometry;
using Portwright.Judging.Chance;

namespace Portwright.Judging.Ports;

/// <summary>Speed over a section as a share of its mean, as it truly is: a wall layer, the bend all sisters share, the scatter of this one casting, and what a fault does.</summary>
public sealed class SpeedField
{
    private const int Grid = 36;

    private readonly (double Size, double Phase)[] _own;
    private readonly double _scatter;
    private SpeedField? _sound;
    private double _mean;

    /// <param name="section">The outline it fills.</param>
    /// <param name="tilt">Roof faster (above zero) or floor faster, share from middle to wall.</param>
    /// <param name="side">The same towards the centre side.</param>
    /// <param name="scatter">Of this casting alone, share at the wall.</param>
    /// <param name="bent">Share of the bend that is felt here, 0 to 1.</param>
    public SpeedField(RoundedSection section, Layer layer, double tilt, double side, double bent, double scatter, Draw draw)
    {
        (Section, Layer, Tilt, Side, Bent, _scatter) = (section, layer, tilt * bent, side * bent, bent, scatter);
        Patches = [];
        _own = [.. Enumerable.Range(1, 4).Select(_ => (draw.Normal(scatter * Math.Sqrt(2.0 / 4)), draw.Between(0, 2 * Math.PI)))];
    }

    private SpeedField(SpeedField faulty) => (Section, Layer, Tilt, Side, Bent, _scatter, Patches, _own) = (faulty.Section, faulty.Layer, faulty.Tilt, faulty.Side, faulty.Bent, faulty._scatter, [], faulty._own);

    public RoundedSection Section { get; private set; }

    public Layer Layer { get; }

    public double Tilt { get; }

    public double Side { get; }

    public double Bent { get; }

    public List<Patch> Patches { get; }

    /// <summary>The air as it would be without what faults do to it.</summary>
    public SpeedField Sound => Patches.Count == 0 ? this : _sound ??= new SpeedField(this);

    /// <summary>The air fills another outline the same way.</summary>
    public void Fill(RoundedSection section) => (Section, _mean, _sound) = (section, 0, null);

    public void Put(Patch patch)
    {
        Patches.Add(patch);
        (_mean, _sound) = (0, null);
    }

    /// <summary>Local over mean speed; the mean over the section is 1.</summary>
    public double At(double x, double y)
    {
        if (_mean == 0) _mean = Mean();
        return Raw(x, y) / _mean;
    }

    /// <summary>Covariance of what two places of this one casting's own air are off by, as shares.</summary>
    public double OwnCommon((double X, double Y) one, (double X, double Y) other)
    {
        (double Hour, double Outwards) At((double X, double Y) place) =>
            (Bearing.Of(new PlanePoint(place.X, place.Y)), Math.Max(0, 1 - Section.Depth(place.X, place.Y) / Section.Deepest));
        var ((a, outA), (b, outB)) = (At(one), At(other));
        var sum = 0.0;
        // Each wave has a size of its own and any phase.
        for (var k = 1; k <= _own.Length; k++) sum += _scatter * _scatter / _own.Length * Math.Cos(k * (a - b) * Math.PI / 6);
        return sum * outA * outB;
    }

    private double Raw(double x, double y)
    {
        var depth = Section.Depth(x, y);
        if (depth <= 0) return 0;
        var outwards = 1 - depth / Section.Deepest;
        var hour = Bearing.Of(new PlanePoint(x, y));
        // A free vortex round a bend: speed goes as one over the radius, so the inner wall is the faster.
        var bent = 1 / (1 - Tilt * y / (Section.Height / 2) * 0.9) * (1 + Side * x / (Section.Width / 2));
        var own = 1.0;
        for (var k = 0; k < _own.Length; k++) own += _own[k].Size * Math.Cos((k + 1) * (hour * Math.PI / 6) + _own[k].Phase) * outwards;
        var patched = 1.0;
        foreach (var patch in Patches) patched *= patch.At(hour, outwards);
        return Layer.At(depth / Section.Deepest) * bent * own * patched;
    }

    private double Mean()
    {
        double sum = 0;
        var count = 0;
        for (var i = 0; i < Grid; i++)
        {
            for (var j = 0; j < Grid; j++)
            {
                var (x, y) = (((i + 0.5) / Grid - 0.5) * Section.Width, ((j + 0.5) / Grid - 0.5) * Section.Height);
                if (Section.Depth(x, y) <= 0) continue;
                sum += Raw(x, y);
                count++;
            }
        }

        return sum / count;
    }
}
