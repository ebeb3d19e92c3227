using System.Globalization;
using Portwright.Shop.Entering;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Pages;

/// <summary>The engine plan as typed in its form.</summary>
public sealed class PlanForm(EnginePlan was, Typing typed, UnitSystem units)
{
    private readonly Dictionary<string, PlanBox> _boxes = PlanGroup.Of(was).SelectMany(g => g.Boxes).ToDictionary(b => b.Name);
    private readonly Surroundings _around = Stated(typed, units);

    /// <summary>The plan; what could not be taken is refused on the form.</summary>
    public EnginePlan Read()
    {
        var plan = was with
        {
            Cylinders = Whole("cylinders", 1, 24),
            Bore = Box("bore"),
            Stroke = Box("stroke"),
            RodLength = Box("rod"),
            PinOffset = typed.Raw("pin") == PinText(was, units) ? was.PinOffset : typed.Si("pin", "Pin offset", Dimension.Length),
            CompressionRatio = Box("ratio"),
            FiringOrder = Order(),
            IntakeCam = Cam("in", "Intake"),
            ExhaustCam = Cam("ex", "Exhaust"),
            IntakeTiming = Timing("in", was.IntakeTiming),
            ExhaustTiming = Timing("ex", was.ExhaustTiming),
            LowestSpeed = Rpm("low", EnteredPlan.LowestSpeed),
            HighestSpeed = Rpm("high", EnteredPlan.HighestSpeed),
            PortSpeed = Band(),
            Fuel = typed.Text("fuel", "Fuel"),
            Mixture = OrNull(new Mixture(), new Mixture(Enum.TryParse<FuelKind>(typed.Raw("fuel-kind"), out var kind) && Enum.IsDefined(kind) ? kind : null, typed.Si("rich", "Mixture", Dimension.Ratio))),
            ClassRules = typed.Text("rules", "Rules"),
            Intake = OrNull(new IntakeTract(), new IntakeTract(Box("runner"), Box("runner-near"), Box("runner-far"), Box("plenum"), Throttle())),
            Exhaust = OrNull(new ExhaustTract(), new ExhaustTract(Box("primary"), Box("primary-size"), Whole("meet", 1, 24), Box("collector"), Box("collector-size"))),
            Air = OrNull(new RunningAir(), new RunningAir(Box("elevation"), Box("air-pressure"), Box("air-temperature"), Box("air-humidity"))),
            Limits = OrNull(new ClassLimits(), new ClassLimits(Box("limit-lift"), Box("limit-ratio"), Box("limit-hole"))),
            SpeedWeights = typed.Raw("weights")?.ReplaceLineEndings("\n") == PlanLists.Of(was.SpeedWeights) ? was.SpeedWeights : PlanLists.Weights(typed),
            Layout = Enum.TryParse<CylinderLayout>(typed.Raw("layout"), out var layout) && Enum.IsDefined(layout) ? layout : null,
        };
        if (typed.IsGood)
        {
            Contradictions(plan);
        }

        return plan;
    }

    /// <summary>The pin offset as its box shows it.</summary>
    public static string PinText(EnginePlan plan, UnitSystem units) => plan.PinOffset is { } offset ? Print.Bare(offset, Dimension.Length, units) : "";

    /// <summary>What the figures say against each other stands at the box they are about; what is only missing may stay so.</summary>
    private void Contradictions(EnginePlan plan)
    {
        foreach (var problem in PlanInFull.Of(plan).Problems.Where(p => !(p.Field == "Bore" && plan.Bore is null || p.Field == "Stroke" && plan.Stroke is null)))
        {
            var box = problem.Field switch
            {
                "Intake cam" => "in-lobe",
                "Exhaust cam" => "ex-lobe",
                "Intake lift table" => "in-table",
                "Exhaust lift table" => "ex-table",
                "Firing order" => "order",
                "Weights" => "weights",
                "Mixture" => "rich",
                "Throttle" => "carb",
                "Pin offset" => "pin",
                _ => _boxes.Values.FirstOrDefault(b => b.Figure == problem.Field)?.Name ?? "name",
            };
            typed.Refuse(box, problem.Words.In(units));
        }
    }

    private double? Box(string name) => _boxes[name].Read(typed, units, _around);

    private int? Whole(string name, int least, int most) => string.IsNullOrWhiteSpace(typed.Raw(name)) ? null : typed.Count(name, _boxes[name].Label, least, most);

    private double? Rpm(string name, EnteredField field) => typed.Raw(name) == _boxes[name].Printed(units) ? _boxes[name].Value : typed.Number(name, field, _around)?.Si(Dimension.RotationalSpeed) * 30 / Math.PI;

    /// <summary>What bore, stroke and highest speed say as typed: the other boxes are judged by them.</summary>
    private static Surroundings Stated(Typing typed, UnitSystem units)
    {
        double? Of(string name, EnteredField field) => TypedNumber.TryParse(typed.Raw(name), field.Dimension, units, field.Label, out var value, out _) ? value.Si(field.Dimension) : null;
        return Surroundings.None.With(EnteredPlan.Bore, Of("bore", EnteredPlan.Bore)).With(EnteredPlan.Stroke, Of("stroke", EnteredPlan.Stroke)).With(EnteredPlan.HighestSpeed, Of("high", EnteredPlan.HighestSpeed));
    }

    private List<int>? Order()
    {
        if (typed.Text("order", "Firing order") is not { Length: > 0 } text)
        {
            return null;
        }

        var order = new List<int>();
        foreach (var part in text.Split([' ', '-', ',', ';', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (!int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                typed.Refuse("order", $"Firing order: \"{part}\" is no cylinder's number. Type it as 1 3 4 2.");
                return null;
            }

            order.Add(number);
        }

        return order;
    }

    private SpeedBand? Band()
    {
        var (slow, fast) = (Box("slow"), Box("fast"));
        if (slow is null && fast is null)
        {
            return null;
        }

        if (slow is not > 0 || fast is not > 0 || slow > fast)
        {
            typed.Refuse("fast", "The speed wanted needs a slowest and a fastest above zero, the slower first. Type both, or leave both empty.");
            return null;
        }

        return new SpeedBand(slow.Value, fast.Value);
    }

    private CamLift? Cam(string side, string label)
    {
        var (lobe, ratio, lash) = (Box($"{side}-lobe"), Box($"{side}-ratio"), Box($"{side}-lash"));
        if (ratio is <= 0)
        {
            typed.Refuse($"{side}-ratio", $"{label} rocker ratio must be above zero. Type it as 1.6.");
        }

        return lobe is { } l ? new CamLift(l, ratio ?? 1, lash ?? 0) : null;
    }

    private CamTiming? Timing(string side, CamTiming? before)
    {
        var table = typed.Raw($"{side}-table")?.ReplaceLineEndings("\n") == PlanLists.Of(before?.Table, units) ? before?.Table : PlanLists.Table(typed, $"{side}-table", units);
        return OrNull(new CamTiming(), new CamTiming(Box($"{side}-seat"), Box($"{side}-at"), Box($"{side}-050"), Box($"{side}-200"), Box($"{side}-centre"), table));
    }

    private Throttle? Throttle()
    {
        var (flow, bore, area) = (Box("carb"), Box("bore-size"), Box("throttle"));
        if ((flow is null ? 0 : 1) + (bore is null ? 0 : 1) + (area is null ? 0 : 1) > 1)
        {
            typed.Refuse("carb", "Throttle: a flow rating, bores and an area are three ways to say one thing. Keep one.");
        }

        return flow is { } f ? new RatedCarburettor(f, Box("carb-at") ?? IntakeInFull.UsualRating)
            : bore is { } d ? new ThrottleBores(Whole("bores", 1, 24) ?? 1, d)
            : area is { } a ? new ThrottleArea(a) : null;
    }

    /// <summary>Null where nothing of it was typed.</summary>
    private static T? OrNull<T>(T nothing, T value)
        where T : class => value.Equals(nothing) ? null : value;
}
