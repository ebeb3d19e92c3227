using CsCheck;
using Portwright.Geometry.LongView;
using Portwright.Geometry.Sections;

namespace Portwright.Geometry.Tests.LongView;

public sealed class PortProfileTests
{
    private const double Valve = 0.0513;
    private static readonly Centreline Line = GenericPort.Centreline(PortSide.Intake, Valve);

    private static readonly Gen<PortProfile> Any =
        Gen.Select(Gen.Double[0.1, 1], Gen.Double[0.012, 0.03], Gen.Double[0.012, 0.03]).Array[2, 8].Select(steps =>
        {
            var whole = steps.Sum(s => s.Item1);
            return Profile(steps.Select((s, i) => new ProfileStation(steps.Take(i + 1).Sum(p => p.Item1) / whole * Line.Length, s.Item2, s.Item3)));
        });

    [Fact]
    public void Roof_and_floor_pass_through_every_station() =>
        Any.Sample(profile => Assert.All(profile.Stations, s =>
        {
            Assert.Equal(s.Roof, profile.RoofAt(Math.Min(s.Distance, Line.Length)), 1e-9);
            Assert.Equal(s.Height, profile.RoofAt(Math.Min(s.Distance, Line.Length)) + profile.FloorAt(Math.Min(s.Distance, Line.Length)), 1e-9);
        }));

    [Fact]
    public void Between_two_stations_neither_line_leaves_their_heights() =>
        Gen.Select(Any, Gen.Double[0, 1]).Sample((profile, share) =>
        {
            for (var i = 1; i < profile.Stations.Count; i++)
            {
                var (a, b) = (profile.Stations[i - 1], profile.Stations[i]);
                var at = a.Distance + share * (Math.Min(b.Distance, Line.Length) - a.Distance);
                Assert.InRange(profile.RoofAt(at), Math.Min(a.Roof, b.Roof) - 1e-12, Math.Max(a.Roof, b.Roof) + 1e-12);
                Assert.InRange(profile.FloorAt(at), Math.Min(a.Floor, b.Floor) - 1e-12, Math.Max(a.Floor, b.Floor) + 1e-12);
            }
        });

    [Theory]
    [InlineData(PortSide.Intake)]
    [InlineData(PortSide.Exhaust)]
    public void The_generic_port_is_marked_from_end_to_end_and_grows_with_the_valve(PortSide side)
    {
        var line = GenericPort.Centreline(side, Valve);
        var profile = Profile(GenericPort.Stations(side, Valve, line), line);
        Assert.All(profile.LineOf(Surface.Roof), p => Assert.True(p.IsGeneric));
        Assert.All(profile.Stations, s => Assert.True(s.IsGeneric));
        Assert.Equal(2, GenericPort.Centreline(side, 2 * Valve).Length / line.Length, 1e-12);
        Gen.Double[0, 1].Sample(along =>
        {
            var section = GenericPort.SectionAt(side, Valve, along);
            Assert.Null(section.Problem());
            Assert.Equal(4, GenericPort.SectionAt(side, 2 * Valve, along).Area / section.Area, 1e-9);
            Assert.InRange(section.Area / OvalSection.Round(Valve).Area, 0.5, 1);
        });
        // Round at the throat.
        Assert.Equal(OvalSection.Round(GenericPort.SectionAt(side, Valve, 1).Width).Area, GenericPort.SectionAt(side, Valve, 1).Area, 1e-12);
    }

    [Fact]
    public void Measured_stations_drive_the_generic_ones_out_between_them_and_pull_the_rest_to_their_size()
    {
        var measured = new[] { ProfileStation.Of(0.03, new RectangleSection(0.03, 0.06, 0.01), "pinch"), ProfileStation.Of(0.09, new RectangleSection(0.04, 0.045, 0.01), "turn") };
        var profile = Profile(GenericPort.Fill(PortSide.Intake, Valve, Line, measured));
        Assert.Equal(["pinch", "turn"], profile.Stations.Where(s => !s.IsGeneric).Select(s => s.Name));
        Assert.DoesNotContain(profile.Stations, s => s.IsGeneric && s.Distance is > 0.03 and < 0.09);
        Assert.True(profile.IsGenericAt(0.02));
        Assert.False(profile.IsGenericAt(0.06));
        Assert.True(profile.IsGenericAt(0.1));
        var asDrawn = GenericPort.SectionAt(PortSide.Intake, Valve, 0.03 / Line.Length).Height;
        Assert.Equal(1.04 * Valve * 0.06 / asDrawn, profile.RoofAt(0) + profile.FloorAt(0), 1e-9);
    }

    [Fact]
    public void A_section_sits_with_its_centroid_on_the_line()
    {
        var station = ProfileStation.Of(0.02, new TrapezoidSection(0.02, 0.04, 0.05, 0));
        // Centroid of the trapezoid above its floor: h (a + 2b) / (3 (a + b)) = .05 x .10 / .18 = .027778.
        Assert.Equal(0.05 * 0.10 / 0.18, station.Floor, 1e-12);
        Assert.Equal(0.05, station.Height, 1e-12);
    }

    [Fact]
    public void What_makes_no_profile_is_refused_with_a_sentence()
    {
        string? Refused(params ProfileStation[] stations) => PortProfile.TryCreate(Line, stations, out _, out var problem) ? null : problem;
        Assert.Contains("one station or more", Refused());
        Assert.Contains("bowl lies outside the port", Refused(new ProfileStation(0.5, 0.02, 0.02, "bowl")));
        Assert.Contains("same distance", Refused(new(0.05, 0.02, 0.02), new(0.05, 0.02, 0.02)));
        Assert.Contains("either side of the centreline", Refused(new ProfileStation(0.05, 0.02, 0)));
        Assert.Contains("past the middle of the bend", Refused(new ProfileStation(0.12, 0.02, 0.06)));
    }

    private static PortProfile Profile(IEnumerable<ProfileStation> stations, Centreline? line = null) =>
        PortProfile.TryCreate(line ?? Line, stations, out var profile, out var problem) ? profile : throw new InvalidOperationException(problem);
}
