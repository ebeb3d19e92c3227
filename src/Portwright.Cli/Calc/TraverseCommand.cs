using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Geometry.Sections;
using Portwright.Physics.Air;
using Portwright.Physics.Pitot;
using Portwright.Physics.Rings;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary><c>calc traverse</c>: where to hold a pitot probe across a duct, and the flow its readings make.</summary>
internal static class TraverseCommand
{
    private const string Rectangle = "rectangle", Source = "ISO 3966, arithmetical methods";

    private static readonly string[] Rules = ["log-linear", "log-tchebycheff", "equal-area", Rectangle];

    public static Command Make()
    {
        var readings = new Argument<string?>("READINGS") { Description = "readings at those places, as many radii or lines as were walked; left out: the places alone", Arity = ArgumentArity.ZeroOrOne };
        var diameter = Length("--diameter", "inside diameter of a round duct");
        var width = Length("--width", "inside width of a rectangular duct");
        var height = Length("--height", "its inside height");
        var points = new Option<int?>("--points") { Description = "points a radius, or each way across a rectangle (usual: 5)", HelpName = "COUNT" };
        var rule = new Option<string?>("--rule") { Description = $"{string.Join(", ", Rules)} (usual: {Rules[0]}, {Rectangle} with --width)", HelpName = "WORD" };
        var of = new Option<string?>("--of") { Description = "what the readings are: pressure (total less static), speed (usual: pressure)", HelpName = "WORD" };
        var barometer = new Option<string?>("--barometer") { Description = "air pressure in the duct, absolute (usual: 101325 Pa)", HelpName = "VALUE" };
        var temperature = new Option<string?>("--temperature") { Description = "air temperature (usual: 20 °C)", HelpName = "VALUE" };
        return ListCommands.Make("traverse", "where to hold a probe across a duct, and the flow its readings make", [readings],
            [diameter, width, height, points, rule, of, barometer, temperature],
            (parsed, system, work) =>
            {
                double? Find(Option<string?> option, Dimension dimension) => parsed.GetValue(option) is { } text ? NumberList.Read(text, option.Name, dimension, system)[0] : null;
                double? d = Find(diameter, Dimension.Length), across = Find(width, Dimension.Length), up = Find(height, Dimension.Length);
                if (d is null == (across is null) || across is null != up is null) throw new Refusal("Type --diameter of a round duct, or --width and --height of a rectangular one.");
                var n = parsed.GetValue(points) ?? 5;
                var word = parsed.GetValue(rule)?.ToLowerInvariant() ?? (d is null ? Rectangle : Rules[0]);
                if (!Rules.Contains(word)) throw new Refusal($"--rule \"{word}\" is not one of {string.Join(", ", Rules)}.");
                if ((word == Rectangle) == d is not null) throw new Refusal($"--rule {word} is for a {(d is null ? "round" : "rectangular")} duct. Type {(d is null ? $"--rule {Rectangle}" : string.Join(", ", Rules[..3]))}.");
                var places = word switch { "log-linear" => Traverse.LogLinear(n), "log-tchebycheff" => Traverse.LogTchebycheff(n), "equal-area" => Traverse.EqualArea(n), _ => Traverse.RectangleSide(n) };
                work.Given.Add(("rule", word));
                for (var i = 0; i < places.Length; i++)
                {
                    var label = string.Create(CultureInfo.InvariantCulture, $"point {i + 1}, from the wall");
                    if (d is { } whole)
                    {
                        work.Working.Answer($"point_{i + 1}", label, places[i] * whole / 2, Dimension.Length, $"{Print(places[i] / 2)} of the diameter", Source);
                    }
                    else
                    {
                        work.Working.Answer($"point_{i + 1}_across", label + ", across", places[i] * across!.Value, Dimension.Length, $"{Print(places[i])} of the width", Source);
                        work.Working.Answer($"point_{i + 1}_up", label + ", up", places[i] * up!.Value, Dimension.Length, $"{Print(places[i])} of the height", Source);
                    }
                }
                if (parsed.GetValue(readings) is not { } typed) return;

                var speeds = Speeds(typed, parsed.GetValue(of), Find(barometer, Dimension.Barometer) ?? 101_325, Find(temperature, Dimension.Temperature) ?? 293.15, system);
                var each = d is null ? n * n : n;
                if (speeds.Length % each != 0) throw new Refusal($"{speeds.Length} readings do not fill the {each} places{(d is null ? "" : " of whole radii")}: every place counts alike, so each needs its reading.");
                work.Given.Add(("readings", typed));
                var area = d is { } round ? OvalSection.Round(round).Area : new RectangleSection(across!.Value, up!.Value, default).Area;
                work.Working.Line("area", "section of the duct", area, Dimension.Area, d is null ? "width x height" : "pi/4 d^2");
                work.Working.Answer("mean_speed", "mean speed", Traverse.Mean(speeds), Dimension.Speed, "plain mean of the speeds, not of the pressures", Source);
                work.Working.Answer("volume_flow", "flow, air as it is in the duct", Traverse.Flow(area, speeds), Dimension.VolumeFlow, "section x mean speed", Source);
                work.Working.Remark("Made for a long straight duct. Behind a bend or a blower the same readings can be several percent off.");
            },
            "portwright calc traverse --diameter 4in --points 3",
            "portwright calc traverse --diameter 4in --points 3 \"0.62 0.74 0.81 0.80 0.75 0.61 inH2O\"",
            "portwright calc traverse --width 6in --height 4in --points 4 --of speed");
    }

    private static double[] Speeds(string typed, string? of, double pressure, double temperature, UnitSystem system)
    {
        if (of == "speed") return NumberList.Read(typed, "readings", Dimension.Speed, system);
        if (of is not (null or "pressure")) throw new Refusal($"--of \"{of}\" is not one of pressure, speed.");
        var (air, probe) = (AirState.Dry(pressure, temperature), new PitotProbe());
        return [.. NumberList.Read(typed, "readings", Dimension.Pressure, system).Select(dp => probe.Speed(dp, pressure, air))];
    }

    private static Option<string?> Length(string name, string words) => new(name) { Description = words, HelpName = "VALUE" };

    private static string Print(double share) => share.ToString("F4", CultureInfo.InvariantCulture);
}
