using Bunit;
using Portwright.Shop.Units;
using Portwright.Web.Forms;
using Portwright.Web.Shell;

namespace Portwright.Web.Tests;

public sealed class ComponentTests : BunitContext
{
    [Fact]
    public void A_field_that_was_not_taken_keeps_what_was_typed_and_says_why()
    {
        var typed = new Typing([new("bore", "4x")], UnitSystem.UsCustomary);
        typed.Needed("bore", "Bore", Dimension.Length);
        var field = Render<Field>(p => p.Add(f => f.Name, "bore").Add(f => f.Label, "Bore").Add(f => f.Value, "4.000").Add(f => f.Typed, typed).Add(f => f.Hint, "Across the cylinder."));
        var input = field.Find("input");
        Assert.Equal("4x", input.GetAttribute("value"));
        Assert.Equal("true", input.GetAttribute("aria-invalid"));
        Assert.Equal("f-bore-problem f-bore-hint", input.GetAttribute("aria-describedby"));
        Assert.Contains("Bore \"4x\"", field.Find("#f-bore-problem").TextContent, StringComparison.Ordinal);
        Assert.Equal("f-bore", field.Find("label").GetAttribute("for"));
    }

    [Fact]
    public void A_word_with_choices_opens_and_one_without_leads_on()
    {
        var where = Render<Where>(p => p.Add(w => w.Words,
        [
            new Word("Tamarack eight", "/job/1", After: "job"),
            new Word("intake 2", "/port/2", Last: true) { Choices = [new Choice("intake 1", "/port/1"), new Choice("intake 2", "/port/2", Here: true)] },
        ]));
        Assert.Equal("/job/1", where.Find("a.word").GetAttribute("href"));
        Assert.Equal("page", where.Find("summary").GetAttribute("aria-current"));
        Assert.Equal(2, where.FindAll("details a").Count);
    }
}
