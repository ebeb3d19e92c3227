using CsCheck;

namespace Portwright.Physics.Tests;

public sealed class RootTests
{
    [Fact]
    public void A_root_is_found_to_its_tolerance_wherever_it_lies() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[0.1, 3]).Sample((at, slope) =>
            Assert.Equal(at, Root.Between(x => Math.Tanh(slope * (x - at)), -3, 3), 2 * Root.Tolerance / slope + 1e-15));

    [Fact]
    public void A_root_at_an_end_is_that_end() => Assert.Equal(2, Root.Between(x => x - 2, 2, 5));

    [Fact]
    public void A_function_of_one_sign_has_none_and_says_so() => Assert.Throws<ArgumentException>(() => Root.Between(x => x * x + 1, -1, 1));
}
