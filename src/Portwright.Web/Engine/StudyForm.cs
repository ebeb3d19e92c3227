using Microsoft.AspNetCore.Http;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Engine;

/// <summary>A study as its address says it: up to two things, each from, to and in how many steps.</summary>
public sealed record StudyForm(Typing Typed, IReadOnlyList<StudySpan> Spans)
{
    public static StudyForm Of(HttpRequest request, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(request);
        var typed = new Typing(request.Query, units);
        List<StudySpan> spans = [];
        foreach (var n in new[] { 1, 2 })
        {
            if (StudyWay.Find(typed.Raw($"vary{n}")) is not { } way || spans.Any(s => s.Way == way)) continue;
            var (from, to) = (typed.NeededSi($"from{n}", "From", way.Dimension), typed.NeededSi($"to{n}", "To", way.Dimension));
            var steps = typed.Count($"steps{n}", "Steps", 2, StudySpan.MostSteps);
            if (double.IsFinite(from) && double.IsFinite(to) && from >= to) typed.Refuse($"to{n}", "To must lie above From. Type the smaller value first.");
            if (typed.IsGood) spans.Add(new(way, from, to, steps));
        }

        return new(typed, typed.IsGood ? spans : []);
    }
}
