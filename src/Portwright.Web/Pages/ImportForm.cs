using System.Globalization;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Units;
using Portwright.Store.Import;
using Portwright.Web.Forms;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Pages;

/// <summary>The form of an import's preview: how columns are read, and where each port of the file goes.</summary>
internal static class ImportForm
{
    /// <summary>What a column may hold, in words.</summary>
    public static IReadOnlyList<(string Value, string Words)> Roles { get; } =
    [
        (nameof(ColumnRole.LeftOut), "not read"),
        (nameof(ColumnRole.Lift), "lift"),
        (nameof(ColumnRole.Reading), "reading"),
        (nameof(ColumnRole.Port), "which port"),
        (nameof(ColumnRole.Cut), "which cut"),
        (nameof(ColumnRole.Repeat), "which repeat"),
        (nameof(ColumnRole.TestPressure), "test pressure"),
        (nameof(ColumnRole.Range), "range of the meter"),
        (nameof(ColumnRole.MeterTemperature), "temperature at the meter"),
        (nameof(ColumnRole.PlenumTemperature), "temperature in the plenum"),
    ];

    private static readonly Dimension[] ReadingDimensions = [Dimension.VolumeFlow, Dimension.Fraction, Dimension.Pressure, Dimension.MassFlow];

    /// <summary>Units a column of that role may be in; empty where it has none.</summary>
    public static IReadOnlyList<(string Value, string Words)> UnitsOf(ColumnMapping column) => column.Role switch
    {
        ColumnRole.Lift => [("", "by the numbers"), .. Names(Dimension.Lift)],
        ColumnRole.Reading => [.. ReadingDimensions.SelectMany(Names)],
        ColumnRole.TestPressure => [.. Names(Dimension.Pressure)],
        ColumnRole.MeterTemperature or ColumnRole.PlenumTemperature => [.. Names(Dimension.Temperature)],
        _ => [],
    };

    /// <summary>The mapping as the person set it; the guess where nothing was set.</summary>
    public static SweepMapping Mapping(SweepMapping guess, Typing typed)
    {
        var mapping = guess;
        foreach (var column in guess.Columns)
        {
            if (typed.Raw(Name("role", column.Column)) is null)
            {
                continue;
            }

            var role = typed.Choice(Name("role", column.Column), column.Role);
            var unit = typed.Raw(Name("unit", column.Column));
            mapping = mapping.With(Set(column, role, unit, mapping));
        }

        return mapping;
    }

    /// <summary>Where the readings of one port and cut of the file go; null where they are left out.</summary>
    public static ImportChoice? Choice(int number, Typing typed)
    {
        if (!Guid.TryParse(typed.Raw(Name("port", number)), out var port))
        {
            return null;
        }

        var cut = typed.Count(Name("cut", number), "Cut", 0, 999);
        var pressure = typed.Needed(Name("pressure", number), "Test pressure", Dimension.Pressure);
        return new ImportChoice(
            port,
            cut,
            typed.Text(Name("done", number), "What was done"),
            typed.Raw(Name("range", number)) ?? "",
            pressure ?? Typed.Of(SweepDefaults.TestPressure, "Pa"),
            typed.Choice(Name("direction", number), FlowDirection.Draw),
            typed.Day(Name("date", number), "Day of the test"));
    }

    public static string Name(string field, int number) => string.Create(CultureInfo.InvariantCulture, $"{field}-{number}");

    private static ColumnMapping Set(ColumnMapping column, ColumnRole role, string? unit, SweepMapping mapping)
    {
        var dimension = role switch
        {
            ColumnRole.Lift => Dimension.Lift,
            ColumnRole.TestPressure => Dimension.Pressure,
            ColumnRole.MeterTemperature or ColumnRole.PlenumTemperature => Dimension.Temperature,
            ColumnRole.Reading => ReadingDimensions.FirstOrDefault(d => unit is { Length: > 0 } && Unit.Find(unit, d) is not null, column.Role == role ? column.Dimension : Dimension.VolumeFlow),
            _ => Dimension.Count,
        };
        return column with
        {
            Role = role,
            Dimension = dimension,
            Unit = unit is { Length: > 0 } && Unit.Find(unit, dimension) is not null ? unit : column.Role == role ? column.Unit : null,
            LiftColumn = role == ColumnRole.Reading
                ? column.LiftColumn ?? mapping.Columns.FirstOrDefault(c => c.Role == ColumnRole.Lift)?.Column
                : null,
        };
    }

    private static IEnumerable<(string Value, string Words)> Names(Dimension dimension) =>
        Unit.All(dimension).Select(u => u.Name).Where(n => n.Length > 0).Distinct().Select(n => (n, n));
}
