using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Shop.Record;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Engine;

/// <summary>An engine run as plain text at 80 columns.</summary>
internal sealed class EnginePage(TextWriter output, Kept<Job> job, EngineAnswer answer, EngineGain? gained, UnitSystem units)
{
    private readonly Page _page = new(output);

    /// <param name="all">List everything assumed, not only how much.</param>
    public void Write(bool all)
    {
        var question = answer.Question;
        _page.Title($"Engine run of {job.Fact.Name}");
        _page.Paragraph(EngineSentences.Best(answer).In(units));
        if (!answer.Warning.IsEmpty) _page.Paragraph(answer.Warning.In(units));
        if (gained is not null) _page.Paragraph($"Cut {gained.Now.Cut.Fact.Number} of {gained.Now.Port.Fact.Name} against cut {gained.Then.Cut.Fact.Number}: {EngineSentences.Gain(gained.Of).In(units)}.");
        _page.Paragraph(EngineSentences.Pays(answer).In(units));
        _page.Line();
        foreach (var kind in (PortKind[])[PortKind.Intake, PortKind.Exhaust]) _page.Pair(EngineSentences.Name(kind), EngineSentences.Port(question, kind), column: 12);
        _page.Pair("run as", EngineSentences.Layout(question), column: 12);
        Speeds();
        var most = answer.Worth.Intake.Concat(answer.Worth.Exhaust).Max(w => Math.Abs(w.Torque));
        _page.Line();
        _page.Paragraph($"One percent more area at a lift is worth, {Print.UnitName(Dimension.Torque, units)} on average over the range");
        Lifts(PortKind.Intake, answer.Worth.Intake, most);
        Lifts(PortKind.Exhaust, answer.Worth.Exhaust, most);
        _page.Line();
        _page.Paragraph("One percent more section there is worth");
        Sections(PortKind.Intake, answer.Worth.IntakeSections);
        Sections(PortKind.Exhaust, answer.Worth.ExhaustSections);
        Foot(question, all);
    }

    private void Speeds()
    {
        var pumping = Unit.Find(units == UnitSystem.Si ? "kPa" : "psi", Dimension.Pressure)!;
        _page.Line();
        _page.Line($"  {"rpm",5}  {"torque, " + Print.UnitName(Dimension.Torque, units),-15}{"power, " + Print.UnitName(Dimension.Power, units),-15}{"filling",8}{"residual",10}{"back",8}{"pumping, " + pumping.Name,13}");
        foreach (var speed in EngineSpeed.Of(answer))
        {
            var p = speed.Point;
            var mark = p == answer.BestTorque ? " T" : p == answer.BestPower ? " P" : "";
            _page.Line(string.Create(CultureInfo.InvariantCulture,
                $"  {p.RevolutionsAMinute,5:0}  {EngineSentences.Torque(p.Torque).Bare(units),-15}{EngineSentences.Power(p.Power).Bare(units),-15}{Percent(p.VolumetricEfficiency),8}{Percent(p.Residual),10}{Percent(p.Reversion),8}{pumping.FromSi(p.PumpingPressure).ToString("F1", CultureInfo.InvariantCulture),13}{mark}{(p.IsSettled ? "" : " not settled")}"));
        }

        _page.Paragraph("(T best torque, P best power. Filling: fresh charge over what the displacement holds of the outside air. Residual: burnt gas left in the charge. Back: pushed back through the intake, of what came in.)", 2);
        _page.Paragraph($"Mean over the range with the plan's weights, one cylinder breathing alone: {Print.WithDoubt(answer.MeanTorque.Value, answer.MeanTorque.Expanded(), Dimension.Torque, units)}. ± is half of a 95 percent interval.", 2);
    }

    private void Lifts(PortKind kind, IReadOnlyList<LiftWorth> worth, double most)
    {
        var curve = answer.Question.Pair.Of(kind)?.Sheet.Flow?.Curve;
        _page.Line($"  {EngineSentences.Name(kind) + " lift",-14}{(curve is null ? "not swept" : "flow, " + Print.UnitName(Dimension.VolumeFlow, units)),-16}{"worth",7}  {"costs",WorthBar.Half}|pays");
        foreach (var w in worth)
        {
            var flow = curve?.PointAt(w.Lift)?.Flow is { } f ? Bare(f, Dimension.VolumeFlow) : "";
            _page.Line($"  {Print.Bare(w.Lift, Dimension.Lift, units),-14}{flow,-16}{EngineSentences.OnePercent(w.Torque).Bare(units),7}  {WorthBar.Of(w.Torque, most)}");
        }
    }

    private void Sections(PortKind kind, IReadOnlyList<SectionWorth> worth)
    {
        var most = answer.Worth.IntakeSections.Concat(answer.Worth.ExhaustSections).Max(w => Math.Abs(w.Torque));
        foreach (var w in worth)
        {
            var at = $"{(w.Distance == 0 ? EngineSentences.Name(kind) + ", seat" : Print.Number(w.Distance, Dimension.Length, units, units == UnitSystem.Si ? 0 : 2)),-15}";
            var place = EngineSentences.Place(answer.Question, kind, w);
            _page.Line($"  {at}{(place.Length > 21 ? place[..21] : place),-22}{Print.Number(w.Area, Dimension.Area, units, units == UnitSystem.Si ? 0 : 2),-11}{EngineSentences.OnePercent(w.Torque).Bare(units),6}  {WorthBar.Of(w.Torque, most, WorthBar.Half / 2)}");
        }
    }

    private void Foot(EngineQuestion question, bool all)
    {
        var assumed = EngineSentences.Assumed(question);
        _page.Line();
        foreach (var caution in question.Cautions) _page.Paragraph("Caution: " + caution.In(units));
        if (all)
        {
            _page.Line("assumed");
            foreach (var sentence in assumed) _page.Paragraph("- " + sentence.In(units), 2, 2);
        }
        else
        {
            _page.Paragraph(assumed.Count switch { 0 => "Nothing was assumed.", 1 => "One thing was assumed; --assumed shows it.", var n => $"{n} things were assumed; --assumed lists them." });
        }

        foreach (var sentence in EngineAnswer.NotKnown) _page.Paragraph(sentence.In(units));
    }

    private string Bare(Physics.Uncertainty.Estimate e, Dimension dimension) => Quantity.Of(e, dimension).Bare(units);

    private static string Percent(double share) => (100 * share).ToString("F1", CultureInfo.InvariantCulture) + " %";
}
