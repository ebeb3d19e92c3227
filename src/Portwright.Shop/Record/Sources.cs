using System.Globalization;

namespace Portwright.Shop.Record;

/// <summary>
/// Names of the physical causes of doubt. Two results that name the same cause share it, and it cancels in their difference as far as it
/// works the same way in both; a cause of one alone does not.
/// </summary>
internal static class Sources
{
    public static string Resolution(string reading) => $"resolution of {reading}";

    public static string ReadingName(Guid reading) => $"reading {reading:N}";

    public static string Repeat(Guid sweep, double lift) => string.Create(CultureInfo.InvariantCulture, $"repeat {sweep:N} at {lift:F6}");

    /// <summary>The scatter all repeats of a sweep are judged by.</summary>
    public static string RepeatPool(Guid sweep) => $"repeat scatter {sweep:N}";

    /// <summary>The bench card's set-up scatter, one estimate that serves every set-up.</summary>
    public static string SetUpPool(Guid bench) => $"set-up scatter {bench:N}";

    public static string LiftSetting(Guid sweep, double lift) => string.Create(CultureInfo.InvariantCulture, $"lift {sweep:N} at {lift:F6}");

    /// <summary>Two sweeps of one named set-up of one head share its scatter; otherwise each sweep is a set-up of its own.</summary>
    public static string SetUp(Kept<Sweep> sweep) =>
        sweep.Fact.SetUp.Length > 0 ? $"set-up {sweep.Entry.Job:N} {sweep.Fact.SetUp}" : $"set-up {sweep.Id:N}";

    public static string MeterOf(Guid bench, string range) => $"meter {bench:N} {range}";

    public static string CalibrationOf(Guid calibration) => $"calibration {calibration:N}";

    public static string PlateOf(Guid bench, string plate) => $"plate {bench:N} {plate}";

    public static string Barometer(Guid bench) => $"barometer {bench:N}";

    public static string Thermometer(Guid bench) => $"thermometer {bench:N}";

    public static string Hygrometer(Guid bench) => $"hygrometer {bench:N}";

    public static string TestPressureGauge(Guid bench) => $"test pressure gauge {bench:N}";

    public static string Day(Guid bench, DateOnly day) => string.Create(CultureInfo.InvariantCulture, $"day {bench:N} {day:yyyy-MM-dd}");

    /// <summary>One caliper measures all sections of a shop.</summary>
    public const string Caliper = "caliper scale";

    /// <summary>Balls of one size come from one bag.</summary>
    public static string Ball(double diameter) => string.Create(CultureInfo.InvariantCulture, $"ball {diameter:F6}");

    public static string OfSection(Guid section, string reading) => $"section {section:N} {reading}";

    /// <summary>One probe reads all rings of a bench.</summary>
    public static string Probe(Guid bench) => $"probe {bench:N}";

    public static string Leak(Guid leak) => $"leak {leak:N}";
}
