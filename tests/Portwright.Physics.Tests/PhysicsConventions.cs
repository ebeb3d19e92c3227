using Portwright.Conventions;

namespace Portwright.Physics.Tests;

public sealed class PhysicsConventions() : RoomConventions(typeof(Root).Assembly)
{
    [Theory]
    [InlineData("m.")]
    [InlineData("Bore, m, above zero.")]
    [InlineData("rad after the piston's top dead centre.")]
    [InlineData("Lift (m) at a crank angle (rad).")]
    [InlineData("Absolute, above 0 to 1000000 Pa.")]
    [InlineData("Mass flow at a differential in Pa.")]
    [InlineData("m/s: sqrt(k p/rho).")]
    [InlineData("Clearance, m; 0 for hydraulic followers.")]
    [InlineData("Standard deviation, in the unit of the readings.")]
    [InlineData("cp/cv, no unit.")]
    [InlineData("Mass fraction of burnt gas.")]
    public void A_unit_is_seen_where_it_stands(string text) => Assert.True(StatedUnit.In(text));

    [Theory]
    [InlineData("")]
    [InlineData("Total pressure before the plate.")]
    [InlineData("Above zero.")]
    [InlineData("0 to 1.")]
    [InlineData("The root m of the equation.")]
    [InlineData("Pressure of air that is at 293.15 K and dry.")]
    [InlineData("Pressure at which the flow no longer follows the ratio.")]
    [InlineData("Metres.")]
    [InlineData("Width of the unit.")]
    [InlineData("mm.")]
    [InlineData("Torque, N m, no unit.")]
    public void A_comment_without_a_unit_is_seen_through(string text) => Assert.False(StatedUnit.In(text));

    [Fact]
    public void What_a_member_throws_is_found_in_its_instructions()
    {
        Assert.Equal([typeof(ArgumentOutOfRangeException)], Thrown(nameof(Throwing.Itself)));
        Assert.Equal([typeof(ArgumentOutOfRangeException)], Thrown(nameof(Throwing.ByTheFramework)));
        Assert.Equal([typeof(InvalidOperationException)], Thrown(nameof(Throwing.Behind)));
        Assert.Equal([typeof(FormatException)], Thrown(nameof(Throwing.Later)));
        Assert.Equal([typeof(ArithmeticException)], Thrown(nameof(Throwing.One)));
        Assert.Empty(Thrown(nameof(Throwing.Nothing)));
    }

    private static IEnumerable<Type> Thrown(string member) => ThrownExceptions.By(typeof(Throwing).GetMember(member)[0]);

    /// <summary>One member for each way to throw.</summary>
    public static class Throwing
    {
        public static int One => Nothing() > 0 ? 1 : throw new ArithmeticException();

        public static int Itself(int x) => x > 0 ? x : throw new ArgumentOutOfRangeException(nameof(x));

        public static void ByTheFramework(int x) => ArgumentOutOfRangeException.ThrowIfNegative(x);

        public static void Behind() => Deeper();

        public static Func<int> Later() => () => throw new FormatException();

        public static int Nothing() => 1;

        private static void Deeper() => Deepest();

        private static void Deepest() => throw new InvalidOperationException();
    }
}
