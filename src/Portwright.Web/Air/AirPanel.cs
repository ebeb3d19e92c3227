using Microsoft.AspNetCore.Components;
using Portwright.Geometry.Views;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;
using Portwright.Web.Shell;

namespace Portwright.Web.Air;

/// <summary>A panel beside the section that is looked at: it records one kind of observation at its station.</summary>
public abstract class AirPanel : ShopPage
{
    [Parameter, EditorRequired] public PortSurvey Survey { get; set; } = null!;

    [Parameter] public SurveyedStation? Station { get; set; }

    [Parameter, EditorRequired] public Ledger Ledger { get; set; } = null!;

    [Parameter, EditorRequired] public View View { get; set; } = null!;

    /// <summary>The page's state as its address has it.</summary>
    [Parameter, EditorRequired] public AirState State { get; set; } = null!;

    /// <summary>What is known around this port's fields.</summary>
    protected Surroundings Around => KnownAround.Port(Ledger, Survey.Sheet.Port.Id);

    protected Guid Job => Survey.Sheet.Job.Id;

    protected Kept<Cut> Cut => Survey.Sheet.Cut;

    /// <summary>The shop's bench; null before there is a card.</summary>
    protected Kept<BenchCard>? Bench => Survey.Sheet.Bench ?? Ledger.All<BenchCard>().LastOrDefault();

    /// <summary>A touched place in words: the hour of the metal and its name, the same in every view.</summary>
    protected string PlaceWords(double? bearing) => bearing is { } hours
        ? FormattableString.Invariant($"{hours:0.#} o'clock, {ViewWords.Metal(hours)}")
        : "the middle";

    /// <summary>The place a number is asked for: as it was sent, else as it was touched; empty where nothing was, and then nothing is asked.</summary>
    protected virtual string Place => Typed.Raw("place") ?? State.Place ?? "";

    /// <summary>The bearing of <see cref="Place"/>; null in the middle.</summary>
    protected double? Bearing => (State with { Place = Place }).Bearing;

    protected bool Asked => (State with { Place = Place }).Touched;

    /// <summary>
    /// True where the form was made for what the page shows now. Another browser may have begun another ball, ring or cut meanwhile: then the
    /// number stays in its box with the reason.
    /// </summary>
    protected bool StillStands(string field, string now)
    {
        if (Typed.Raw("for") == now)
        {
            return true;
        }

        Typed.Refuse(field, "Something else was begun here meanwhile, in another window or on another screen. Look at what is asked now, then save again.");
        return false;
    }

    /// <summary>The room's air as last written down within half a day; null where nobody did.</summary>
    protected RoomAir? AirNow => Ledger.All<WeatherReading>().LastOrDefault(w => w.Entry.At > Now.AddHours(-12) && w.Fact.Pressure == PressureKind.Station) is { Fact: var weather }
        ? new RoomAir(weather.Barometer, weather.Temperature, weather.HumidityKind == HumidityKind.Relative ? weather.Humidity : null)
        : null;

    /// <summary>Saves a fact that can be reduced and shows the page anew; a fact that cannot is refused at its field.</summary>
    /// <param name="next">Where to; null: the same place, the touch let go.</param>
    protected bool Keep(Fact fact, string field, string? next = null, Guid? subject = null)
    {
        var entry = Entry.About(subject ?? Guid.CreateVersion7(Now), Job, fact, Now, Hand);
        if (Trial.Refuses(Ledger, entry) is { } why)
        {
            Typed.Refuse(field, why);
            return false;
        }

        Shop.Save([entry, .. Confirmations(entry.Subject, Job)]);
        Go.NavigateTo(next ?? (State with { Place = null }).Href);
        return true;
    }

    /// <summary>Takes back a reading of this page: it stays in the record, hidden, and can be put back.</summary>
    protected void TakeBack<T>()
        where T : Fact
    {
        if (Guid.TryParse(Typed.Raw("back"), out var id) && Ledger.Find<T>(id) is { } kept && !Ledger.IsHidden(id))
        {
            Shop.Save(Amend.Hide(kept, Now, Hand, "taken back at the bench"));
            Go.NavigateTo($"{State.Href}{(State.Href.Contains('?', StringComparison.Ordinal) ? '&' : '?')}took={id}");
            return;
        }

        Go.NavigateTo(State.Href);
    }

    protected string Lift(Typed lift) => Print.Number(lift.Si(Dimension.Lift), Dimension.Lift, Units);
}
