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

    public static bool IsRepeat(string source) => source.StartsWith("repeat ", StringComparison.Ordinal) && source.Contains(" at ", StringComparison.Ordinal);

    public static bool IsLiftSetting(string source) => source.StartsWith("lift ", StringComparison.Ordinal);

    /// <summary>One plate in one check of the bench: another plate of the same check scatters by itself.</summary>
    public static string PlateRepeat(Guid check, string plate) => $"repeat {check:N} of {plate}";

    /// <summary>The scatter all repeats of a sweep are judged by.</summary>
    public static string RepeatPool(Guid sweep) => $"repeat scatter {sweep:N}";

    /// <summary>The bench card's set-up scatter, one estimate that serves every set-up.</summary>
    public static string SetUpPool(Guid bench) => $"set-up scatter {bench:N}";

    public static string LiftSetting(Guid sweep, double lift) => string.Create(CultureInfo.InvariantCulture, $"lift {sweep:N} at {lift:F6}");

    /// <summary>Two sweeps of one named set-up of one head share its scatter; otherwise each sweep is a set-up of its own.</summary>
    public static string SetUp(Kept<Sweep> sweep) =>
        sweep.Fact.SetUp.Length > 0 ? $"set-up {sweep.Entry.Job:N} {sweep.Fact.SetUp}" : $"set-up {sweep.Id:N}";

    public static string MeterOf(Guid bench, string range) => $"meter {bench:N} {range}";

    /// <summary>What a scale was set at, where nobody stated it.</summary>
    public static string AssumedOf(Guid bench, string scale, string what) => $"{AssumedHead(what)} {bench:N} {scale.ToUpperInvariant()}";

    public static string AssumedHead(string what) => $"assumed {what} of scale";

    public static bool IsAssumed(string source) => source.StartsWith("assumed ", StringComparison.Ordinal);

    public static string CalibrationOf(Guid calibration) => $"calibration {calibration:N}";

    public static string PlateOf(Guid bench, string plate) => $"plate {bench:N} {plate}";

    public static string Barometer(Guid bench) => $"barometer {bench:N}";

    public static string Thermometer(Guid bench) => $"thermometer {bench:N}";

    /// <summary>How much a bench's blower warms the air it blows.</summary>
    public static string BlowerWarmth(Guid bench) => $"warmth of the blower {bench:N}";

    /// <summary>How far the air of plenum and meter lie apart, where one thermometer speaks for both.</summary>
    public static string BetweenPlenumAndMeter(Guid bench) => $"air between plenum and meter {bench:N}";

    public static string Hygrometer(Guid bench) => $"hygrometer {bench:N}";

    public static string TestPressureGauge(Guid bench) => $"test pressure gauge {bench:N}";

    public static string Day(Guid bench, DateOnly day) => string.Create(CultureInfo.InvariantCulture, $"day {bench:N} {day:yyyy-MM-dd}");

    /// <summary>One caliper measures all sections of a shop. Named as the section's own working names it.</summary>
    public const string Caliper = "caliper scale";

    /// <summary>Balls of one size come from one bag.</summary>
    public static string Ball(double diameter) => string.Create(CultureInfo.InvariantCulture, $"ball {diameter:F6}");

    public static string OfSection(Guid section, string reading) => $"section {section:N} {reading}";

    /// <summary>One probe reads all rings of a bench.</summary>
    public static string Probe(Guid bench) => $"probe {bench:N}";

    public static string Leak(Guid leak) => $"leak {leak:N}";

    /// <summary>Scatter of one reading taken while a ball or a probe is held in the port, which no repeat shows.</summary>
    public static string RepeatOf(string reading) => $"repeat of {reading}";

    /// <summary>One measured length of valve and seat, the same at every lift and cut.</summary>
    public static string OfValve(Guid port, string length) => $"{length} of port {port:N}";

    public static string Burette(Guid reading) => $"burette {reading:N}";

    /// <summary>What an advice taken promised.</summary>
    public static string Advice(Guid advice) => $"advice {advice:N}";

    /// <summary>A share of a loss that is judged and not measured.</summary>
    public static string Judged(string what) => JudgedBegins + what;

    public const string JudgedBegins = "judgement: ";

    /// <summary>The way along the middle line between two stations.</summary>
    public static string Way(Guid from, Guid to) => $"way from {from:N} to {to:N}";

    /// <summary>One gauge measures all walls of a shop.</summary>
    public const string WallGauge = "wall gauge";

    public const string PipeProfile = "pipe profile", CamShape = "shape of the cam";
}
