using System.Text.Json.Serialization;

namespace Portwright.Shop.Record;

/// <summary>What an entry states. Every kind of fact the record knows is listed here and nowhere else.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "type")]
[JsonDerivedType(typeof(Job), "job")]
[JsonDerivedType(typeof(Head), "head")]
[JsonDerivedType(typeof(Port), "port")]
[JsonDerivedType(typeof(Cut), "cut")]
[JsonDerivedType(typeof(Sweep), "sweep")]
[JsonDerivedType(typeof(FlowReading), "flow-reading")]
[JsonDerivedType(typeof(WeatherReading), "weather")]
[JsonDerivedType(typeof(LeakReading), "leak-reading")]
[JsonDerivedType(typeof(Photo), "photo")]
[JsonDerivedType(typeof(BenchCard), "bench-card")]
[JsonDerivedType(typeof(Calibration), "calibration")]
[JsonDerivedType(typeof(MorningCheck), "morning-check")]
[JsonDerivedType(typeof(SetUpStudy), "set-up-study")]
[JsonDerivedType(typeof(UsualRun), "usual-run")]
[JsonDerivedType(typeof(Station), "station")]
[JsonDerivedType(typeof(Centreline), "centreline")]
[JsonDerivedType(typeof(Section), "section")]
[JsonDerivedType(typeof(VolumeReading), "volume")]
[JsonDerivedType(typeof(Ring), "ring")]
[JsonDerivedType(typeof(ProbeReading), "probe-reading")]
[JsonDerivedType(typeof(BallCheck), "ball-check")]
[JsonDerivedType(typeof(BallReading), "ball-reading")]
[JsonDerivedType(typeof(BallCalibration), "ball-calibration")]
[JsonDerivedType(typeof(FlagReading), "flag-reading")]
[JsonDerivedType(typeof(WallPoint), "wall-point")]
[JsonDerivedType(typeof(Advice), "advice")]
[JsonDerivedType(typeof(Confirmed), "confirmed")]
[JsonDerivedType(typeof(Hidden), "hidden")]
[JsonDerivedType(typeof(Shown), "shown")]
public abstract record Fact
{
    /// <summary>Readings: once saved they are corrected only with a reason.</summary>
    [JsonIgnore]
    public virtual bool IsMeasured => false;
}

/// <summary>The subject is hidden from lists and sheets. Nothing is deleted; <see cref="Shown"/> brings it back.</summary>
public sealed record Hidden : Fact;

/// <summary>The subject is shown again, as it last stood.</summary>
public sealed record Shown : Fact;
