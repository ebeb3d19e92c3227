using System.Reflection;
using System.Text.Json.Serialization;
using Portwright.Engine.Runs;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Record;

/// <summary>Every choice that is written down keeps its name and its number: a record of years ago is read as it was meant.</summary>
public sealed class StoredNumbers
{
    private static readonly Dictionary<Type, string> Pinned = new()
    {
        [typeof(PortKind)] = "Intake=0 Exhaust=1",
        [typeof(ExhaustSide)] = "Across=0 WithIntakes=1",
        [typeof(FuelKind)] = "Petrol=0 Methanol=1 Ethanol=2 Other=3",
        [typeof(CylinderLayout)] = "OneForAll=0 All=1",
        [typeof(PressureKind)] = "Station=0 SeaLevel=1",
        [typeof(HumidityKind)] = "Relative=0 DewPoint=1 WetBulb=2",
        [typeof(SectionForm)] = "Rectangle=0 Oval=1 Racetrack=2 Egg=3 Trapezoid=4 Widths=5 Traced=6 Template=7",
        [typeof(MetalInAirKind)] = "Stem=0 Guide=1 GuideBoss=2",
        [typeof(StationRole)] = "Other=0 Flange=1 Pinch=2 ShortSide=3 Bowl=4 Throat=5 Guide=6",
        [typeof(Steadiness)] = "Still=0 Trembles=1 Swings=2 Hangs=3 TurnsBack=4",
        [typeof(Behind)] = "Unknown=0 Water=1 Oil=2 Pushrod=3 SpringSeat=4 Bolt=5 Air=6",
        [typeof(Decision)] = "Accepted=0 Refused=1 Postponed=2",
        [typeof(FlowDirection)] = "Draw=0 Blow=1",
        [typeof(MeterInlet)] = "Plenum=0 PlenumPlusDifferential=1 Room=2",
        [typeof(OrificeTaps)] = "Corner=0 DAndHalfD=1 Flange=2",
        [typeof(RangeScale)] = "SquareRoot=0 Linear=1",
        [typeof(ReadoutBasis)] = "ActualAtMeter=0 ActualAtState=1 StandardAirCorrected=2 AssumedDensity=3 Restated=4",
        [typeof(Dimension)] = "Length=0 Lift=1 Elevation=2 Pressure=3 Barometer=4 Temperature=5 VolumeFlow=6 MassFlow=7 Speed=8 Area=9 "
            + "Volume=10 Angle=11 Fraction=12 Ratio=13 Density=14 RotationalSpeed=15 Power=16 Torque=17 Viscosity=18 Duration=19 Count=20",
        [typeof(UnitSystem)] = "UsCustomary=0 Si=1",
    };

    /// <summary>Not a member of any fact, and yet written: sentences of advice name a dimension by its number.</summary>
    private static readonly Type[] InSentences = [typeof(Dimension), typeof(UnitSystem)];

    [Fact]
    public void Every_choice_a_fact_or_a_kept_engine_run_holds_is_pinned()
    {
        var held = Held(typeof(Fact), typeof(Entry), typeof(EngineTask), typeof(OperatingPoint)).Concat(InSentences).ToHashSet();
        Assert.True(held.Count > 10, "The facts were not looked through.");
        Assert.Equal(Pinned.Keys.Select(t => t.FullName).Order(), held.Select(t => t.FullName).Order());
    }

    [Fact]
    public void Names_and_numbers_are_those_of_all_records_written_so_far() =>
        Assert.All(Pinned, p => Assert.Equal(p.Value, string.Join(' ', Enum.GetValuesAsUnderlyingType(p.Key).Cast<object>().Select(n => $"{Enum.GetName(p.Key, n)}={n}"))));

    /// <summary>Given by hand: a name put in between moves no other. The compiler's own count leaves the same trace, so the source is asked.</summary>
    [Fact]
    public void The_numbers_are_written_in_the_source()
    {
        foreach (var type in Pinned.Keys)
        {
            var text = SourceOf(type);
            Assert.All(Enum.GetNames(type), name => Assert.Contains($" {name} = {Convert.ToInt32(Enum.Parse(type, name), System.Globalization.CultureInfo.InvariantCulture)},", text, StringComparison.Ordinal));
        }
    }

    private static HashSet<Type> Held(params Type[] roots)
    {
        var (seen, left) = (new HashSet<Type>(), new Stack<Type>(roots));
        while (left.TryPop(out var type))
        {
            type = Nullable.GetUnderlyingType(type) ?? type;
            if (!seen.Add(type)) continue;
            foreach (var part in type.GetGenericArguments()) left.Push(part);
            if (type.HasElementType) left.Push(type.GetElementType()!);
            if (type.Namespace?.StartsWith("Portwright", StringComparison.Ordinal) != true || type.IsEnum) continue;
            foreach (var kind in type.GetCustomAttributes<JsonDerivedTypeAttribute>()) left.Push(kind.DerivedType);
            foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetCustomAttribute<JsonIgnoreAttribute>() is null)) left.Push(property.PropertyType);
        }

        return [.. seen.Where(t => t.IsEnum && t.Namespace!.StartsWith("Portwright", StringComparison.Ordinal))];
    }

    private static string SourceOf(Type type, [System.Runtime.CompilerServices.CallerFilePath] string here = "")
    {
        var up = new DirectoryInfo(Path.GetDirectoryName(here)!);
        while (!File.Exists(Path.Combine(up.FullName, "Portwright.slnx"))) up = up.Parent!;
        return Directory.EnumerateFiles(Path.Combine(up.FullName, "src", type.Assembly.GetName().Name!), "*.cs", SearchOption.AllDirectories)
            .Select(File.ReadAllText).Single(t => t.Contains($"namespace {type.Namespace};", StringComparison.Ordinal) && System.Text.RegularExpressions.Regex.IsMatch(t, $@"(?m)^public enum {type.Name}\r?$"));
    }
}
