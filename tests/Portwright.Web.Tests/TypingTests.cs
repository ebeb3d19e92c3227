using Portwright.Shop.Entering;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Tests;

public sealed class TypingTests
{
    private static Typing Typed(string text, UnitSystem units = UnitSystem.UsCustomary) => new([new("x", text)], units);

    [Theory]
    [InlineData(".050 .100 .150")]
    [InlineData(".050; .100; .150")]
    [InlineData("50\r\n100\r\n150")]
    [InlineData("1.27 mm 2.54 mm 3.81mm")]
    [InlineData("0,050 0,100 0,150")]
    public void A_list_of_lifts_is_read_however_it_is_parted(string text)
    {
        var typed = Typed(text);
        var lifts = typed.Several("x", "Lifts", Dimension.Lift).Select(l => Math.Round(l.Si(Dimension.Lift), 8));
        Assert.Equal([0.00127, 0.00254, 0.00381], lifts);
        Assert.True(typed.IsGood);
    }

    [Fact]
    public void A_bad_number_in_a_list_is_named()
    {
        var typed = Typed(".050 .1x0");
        typed.Several("x", "Lifts", Dimension.Lift);
        Assert.Contains(".1x0", typed.Problems["x"], StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_number_is_none_and_a_needed_one_says_so()
    {
        var typed = Typed(" ");
        Assert.Null(typed.Number("x", "Bore", Dimension.Length));
        Assert.True(typed.IsGood);
        Assert.Null(typed.Needed("x", "Bore", Dimension.Length));
        Assert.StartsWith("Bore is empty.", typed.Problems["x"], StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_do_not_get_into_the_record() =>
        Assert.Equal("bowl\nblended", Typed(" bowl\u0000\n\u0007blended\u001b ").Text("x"));

    [Theory]
    [InlineData("0.57", "57")]
    [InlineData(",57", "57")]
    [InlineData("1", "100")]
    public void A_humidity_as_a_share_of_one_is_asked_back_the_likely_value_first(string text, string likely)
    {
        var typed = Typed(text);
        typed.Needed("x", EnteredRoom.Humidity, Surroundings.None);
        Assert.Equal(likely, typed.Questions["x"].Likely[0]);
        Assert.StartsWith($"Relative humidity: {likely}? \"{text}\" was typed", typed.Questions["x"].Words, StringComparison.Ordinal);
        Assert.False(typed.IsGood);
    }

    [Theory]
    [InlineData("57", 0.57)]
    [InlineData("7 %", 0.07)]
    public void A_humidity_in_percent_stands(string text, double share)
    {
        var typed = Typed(text);
        Assert.Equal(share, typed.Needed("x", EnteredRoom.Humidity, Surroundings.None)!.Si(Dimension.Fraction), 1e-12);
        Assert.True(typed.IsGood);
    }

    /// <summary>Enter presses the button of the likely value, whatever stands in the box by then.</summary>
    [Theory]
    [InlineData("202", "2.02")]
    [InlineData("1.94", "1.94")]
    public void A_question_answered_by_typing_anew_takes_what_was_typed(string box, string taken)
    {
        var typed = new Typing([new("x", box), new("asked.x", "202"), new("take.x", "2.02")], UnitSystem.UsCustomary);
        Assert.Equal(taken, typed.Needed("x", EnteredValve.Head, Surroundings.None)!.Text);
        Assert.True(typed.IsGood);
    }

    [Theory]
    [InlineData("2.9", true)]
    [InlineData("3.1", false)]
    public void What_was_kept_is_kept_for_that_number_alone(string box, bool good)
    {
        var typed = new Typing([new("x", box), new("keep.x", "2.9")], UnitSystem.UsCustomary);
        typed.Needed("x", EnteredValve.Head, Surroundings.None);
        Assert.Equal(good, typed.IsGood);
        Assert.Equal(good ? [("Valve head", "2.9")] : [], typed.KeptAsTyped.Select(k => (k.Field, k.Text)));
    }
}
