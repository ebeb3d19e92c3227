using Microsoft.Extensions.Primitives;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;
using Portwright.Web.Pages;

namespace Portwright.Web.Tests;

/// <summary>The engine plan's form, as it was sent.</summary>
public sealed class PlanFormTests
{
    private const double Degree = Math.PI / 180;

    private static readonly EnginePlan Whole = new(
        0.103124, 0.0889, 0.1524, 8, 10.6, new CamLift(0.008382, 1.6, 0.000254), new CamLift(0.008255, 1.6, 0.0003), 2500, 6400, "petrol, pump", "road", "", new SpeedBand(95, 110), 0.0005,
        [1, 8, 4, 3, 6, 5, 7, 2], new CamTiming(278.3 * Degree, 0.00015, 226.1 * Degree, 141.2 * Degree, 108.4 * Degree), new CamTiming(284 * Degree, 0.00015, 232 * Degree, null, 113 * Degree),
        new IntakeTract(0.1401, 0.001703, 0.00188, 0.0016, new RatedCarburettor(0.3067, 5079.6)), new ExhaustTract(0.8382, 0.0416, 4, 0.3048, 0.07366), new Mixture(FuelKind.Petrol, 1.15),
        new RunningAir(241.3, null, 298.17, 0.513), [new(2500, 1), new(6400, 0.5)], CylinderLayout.All, new ClassLimits(0.01334, 11));

    [Theory]
    [InlineData(UnitSystem.UsCustomary)]
    [InlineData(UnitSystem.Si)]
    public void A_plan_sent_back_as_it_was_shown_is_the_same_to_the_last_digit(UnitSystem units)
    {
        var typed = Sent(Whole, units);
        var read = new PlanForm(Whole, typed, units).Read();
        Assert.Empty(typed.Problems);
        Assert.Equal(Whole with { FiringOrder = null }, read with { FiringOrder = null });
        Assert.Equal(Whole.FiringOrder, read.FiringOrder);
    }

    [Fact]
    public void A_lift_table_pasted_from_a_spreadsheet_is_taken_row_by_row()
    {
        var rows = string.Join("\r\n", Enumerable.Range(0, 27).Select(i => FormattableString.Invariant($"{-20 + 10 * i}\t{(i is 0 or 26 ? 0 : 0.48 * Math.Sin(Math.PI * i / 26)):0.0000}")));
        var typed = Sent(Whole with { IntakeCam = null }, UnitSystem.UsCustomary, ("in-table", rows));
        var table = new PlanForm(Whole with { IntakeCam = null }, typed, UnitSystem.UsCustomary).Read().IntakeTiming!.Table!;
        Assert.Empty(typed.Problems);
        Assert.Equal((27, -20 * Degree, 0.48 * 0.0254), (table.Count, table[0].Crank, Math.Round(table.Max(r => r.Lift), 9)));
    }

    [Theory]
    [InlineData("rod", "1.5", "half the stroke")]
    [InlineData("order", "1 2 3", "each of 8 cylinders once")]
    [InlineData("order", "1 2 x", "no cylinder's number")]
    [InlineData("high", "2000", "below the lowest")]
    [InlineData("weights", "3000", "a row a line")]
    [InlineData("bore-size", "1.75", "Keep one")]
    [InlineData("limit-lift", ".500", "the class allows .500")]
    public void What_cannot_be_is_refused_in_words_at_a_box(string name, string value, string words)
    {
        // What is only unlikely was asked about and kept; what contradicts the rest is refused all the same.
        var typed = Sent(Whole, UnitSystem.UsCustomary, (name, value), ($"keep.{name}", value));
        new PlanForm(Whole, typed, UnitSystem.UsCustomary).Read();
        Assert.Contains(typed.Problems.Values, p => p.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void An_empty_form_is_an_empty_plan()
    {
        var typed = new Typing([], UnitSystem.UsCustomary);
        Assert.Equal(new EnginePlan(), new PlanForm(new EnginePlan(), typed, UnitSystem.UsCustomary).Read());
        Assert.Empty(typed.Problems);
    }

    private static Typing Sent(EnginePlan plan, UnitSystem units, params (string Name, string Value)[] over)
    {
        var fields = PlanGroup.Of(plan).SelectMany(g => g.Boxes).ToDictionary(b => b.Name, b => new StringValues(b.Printed(units) ?? ""));
        fields["pin"] = PlanForm.PinText(plan, units);
        fields["order"] = string.Join(' ', plan.FiringOrder ?? []);
        fields["weights"] = PlanLists.Of(plan.SpeedWeights);
        fields["in-table"] = PlanLists.Of(plan.IntakeTiming?.Table, units);
        fields["ex-table"] = PlanLists.Of(plan.ExhaustTiming?.Table, units);
        (fields["fuel"], fields["rules"], fields["fuel-kind"], fields["rich"], fields["layout"]) = (plan.Fuel, plan.ClassRules, plan.Mixture?.Fuel.ToString(), "1.15", plan.Layout.ToString());
        foreach (var (name, value) in over) fields[name] = value;
        return new Typing(fields, units);
    }
}
