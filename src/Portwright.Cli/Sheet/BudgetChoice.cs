using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Shop.Ports;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Sheet;

/// <summary>Which number of a port sheet is meant, by its options; the flow at the lift that counts where none is given.</summary>
internal sealed class BudgetChoice
{
    private readonly Option<string?> _lift = new("--lift") { Description = "flow at this lift; with --against-last, --against-first or --against-port the difference there", HelpName = "LIFT" };
    private readonly Option<bool> _mean = new("--mean") { Description = "mean flow over the lifts" };
    private readonly Option<bool> _last = new("--against-last") { Description = "this cut less the last" };
    private readonly Option<bool> _first = new("--against-first") { Description = "this cut less the first tested" };
    private readonly Option<string?> _port = new("--against-port") { Description = "this port less another of the job, at their latest cuts", HelpName = "PORT" };
    private readonly Option<string?> _section = new("--section") { Description = "area of that section", HelpName = "LETTER" };
    private readonly Option<string?> _ring = new("--ring") { Description = "mean speed of the ring there", HelpName = "LETTER" };
    private readonly Option<string?> _ball = new("--ball") { Description = "loss with the ball there: section and clock hour, C for the middle", HelpName = "LETTER/HOUR" };
    private readonly Option<bool> _volume = new("--volume") { Description = "port volume by burette" };
    private readonly Option<string?> _key = new("--of") { Description = "the number that sheet --json calls so under \"budget\"", HelpName = "KEY" };

    public IReadOnlyList<Option> Options => [_lift, _mean, _last, _first, _port, _section, _ring, _ball, _volume, _key];

    /// <exception cref="Refusal">Two numbers are named, or the port has none such.</exception>
    /// <param name="other">The flow of a port of that name, and what it is called.</param>
    public PortNumber Of(ParseResult parsed, PortAtCut port, UnitSystem units, Func<string, (CutFlow? Flow, string Name)> other)
    {
        bool Given(Option option) => parsed.GetResult(option) is { Implicit: false };
        var (lift, against) = (Lift(parsed.GetValue(_lift), units), parsed.GetValue(_last) || parsed.GetValue(_first) || parsed.GetValue(_port) is not null);
        Option[] named = [.. Options.Where(o => Given(o) && !(o == _lift && against))];
        if (named.Length > 1) throw new Refusal($"{string.Join(" and ", named.Select(o => o.Name))} name two numbers: ask for one. --lift goes with --against-last, --against-first and --against-port only.");
        if (parsed.GetValue(_port) is { } sister) return Sister(port, other(sister), lift);
        if (against) return Cut(port, parsed.GetValue(_last) ? port.Sheet.AgainstLast : port.Sheet.AgainstFirst ?? port.Sheet.AgainstLast, lift);
        if (lift is { } at) return PortNumber.FlowAt(port, at) ?? throw NotTested(port, at);
        var all = PortNumber.Of(port).ToList();
        PortNumber Keyed(string key, string why) => all.Find(n => n.Key == key) ?? throw new Refusal($"{Title(port)}: {why}");
        if (parsed.GetValue(_mean)) return Keyed(PortNumber.MeanKey, "a mean flow needs two lifts tested.");
        if (parsed.GetValue(_volume)) return Keyed(PortNumber.VolumeKey, "the port was not filled with a burette at this cut.");
        if (parsed.GetValue(_section) is { } section) return Keyed(PortNumber.SectionKey(section.Trim()), $"no section {section} was measured. {Measured(port, s => s.Section is not null)}");
        if (parsed.GetValue(_ring) is { } ring) return Keyed(PortNumber.RingKey(ring.Trim()), $"no ring was taken at {ring}. {Measured(port, s => s.Ring is not null)}");
        if (parsed.GetValue(_ball) is { } ball) return Keyed(PortNumber.BallKey(Ball(port, ball)), "the ball was not held there.");
        if (parsed.GetValue(_key) is { } key) return Keyed(key, $"no number is called {key}. There are: {string.Join(", ", all.Select(n => n.Key))}.");
        return PortNumber.First(port) ?? throw new Refusal($"{Title(port)} has no reading yet: sweep the port, or ask for a section with --section.");
    }

    private static PortNumber Cut(PortAtCut port, CutComparison? against, double? lift) => against is null
        ? throw new Refusal($"{Title(port)}: no earlier cut was swept with the same fitting.")
        : Difference(port, against, $"cut {against.Last.Cut.Fact.Number}", lift);

    private static PortNumber Sister(PortAtCut port, (CutFlow? Flow, string Name) other, double? lift) =>
        port.Sheet.Flow is { } flow && other.Flow is { } its && CutComparison.Between(flow, its) is { } against
            ? Difference(port, against, $"{other.Name}, cut {its.Cut.Fact.Number}", lift)
            : throw new Refusal($"{Title(port)} and {other.Name} cannot be compared: both must be swept, with the same fitting and lifts in common.");

    private static PortNumber Difference(PortAtCut port, CutComparison against, Sentence less, double? lift)
    {
        var key = lift is not { } at ? PortNumber.LessKey(against)
            : against.At(at) is { } there ? PortNumber.LessKey(against, there.Lift)
            : throw NotTested(port, at);
        return PortNumber.Less(against, less).First(n => n.Key == key);
    }

    private static int Ball(PortAtCut port, string typed)
    {
        var balls = port.Survey.Balls.ToList();
        var parts = typed.Split('/', StringSplitOptions.TrimEntries);
        double? hour = parts.Length < 2 ? null : double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var h) ? h : throw new Refusal($"--ball \"{typed}\": type the section's letter and the clock hour, as C/6.");
        var found = balls.FindIndex(b => b.Station.Fact.Letter.Equals(parts[0], StringComparison.OrdinalIgnoreCase) && b.Bearing == hour);
        return found >= 0 ? found : throw new Refusal($"{Title(port)}: no ball was held at {typed}. There are: {string.Join(", ", balls.Select(b => b.Bearing is { } at ? FormattableString.Invariant($"{b.Station.Fact.Letter}/{at:0.##}") : b.Station.Fact.Letter))}.");
    }

    private static double? Lift(string? typed, UnitSystem units) => typed is null ? null
        : TypedNumber.TryParse(typed, Dimension.Lift, units, "--lift", out var read, out var problem) ? read.Si(Dimension.Lift)
        : throw new Refusal(problem);

    private static Refusal NotTested(PortAtCut port, double lift) => new(port.Sheet.Flow is { Curve: var curve }
        ? ((Sentence)$"{Title(port)} was not tested at {Quantity.Lift(lift)}: from {Quantity.Lift(curve.LowestLift)} to {Quantity.Lift(curve.HighestLift)}, and nothing is guessed past that. A difference is there at tested lifts only.").In(UnitSystem.UsCustomary)
        : $"{Title(port)} has no reading yet: sweep the port.");

    private static string Measured(PortAtCut port, Func<SurveyedStation, bool> has) => $"There are: {string.Join(", ", port.Survey.Stations.Where(has).Select(s => s.Letter))}.";

    private static string Title(PortAtCut port) => $"{port.Sheet.Port.Fact.Name} at cut {port.Sheet.Cut.Fact.Number}";
}
