using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Shell;

/// <summary>What every page drawn by the server needs at hand.</summary>
public abstract class ShopPage : ComponentBase
{
    [CascadingParameter] protected HttpContext Http { get; set; } = null!;

    [Inject] protected ShopRecord Shop { get; set; } = null!;

    [Inject] protected WorkbenchOptions Options { get; set; } = null!;

    [Inject] protected NavigationManager Go { get; set; } = null!;

    protected UnitSystem Units => Look.Units(Http, Options);

    /// <summary>What was typed in the form that was sent; empty on a page just opened.</summary>
    protected Typing Typed { get; private set; } = Typing.Nothing;

    protected override void OnInitialized()
    {
        Typed = HttpMethods.IsPost(Http.Request.Method) && Http.Request.HasFormContentType
            ? new Typing(Http.Request.Form, Units)
            : Typing.Nothing;
        if (Typed.Hand is { } hand)
        {
            Hands.Remember(Http, hand);
        }

        Open();
    }

    /// <summary>Reads what the page shows.</summary>
    protected virtual void Open()
    {
    }

    /// <summary>What the form asked about and the hand kept all the same, to be saved with the fact it stands in.</summary>
    protected IEnumerable<Entry> Confirmations(Guid of, Guid? job) =>
        Typed.KeptAsTyped.Select(k => Entry.About(Guid.CreateVersion7(Now), job, new Confirmed(of, k.Field, k.Text, k.Question), Now, Hand));

    private Entry? _standIn;

    /// <summary>The shop's bench; where nothing is written down of it the stand-in, which is saved with the first thing that is.</summary>
    protected Kept<BenchCard> BenchOrStandIn()
    {
        if (Shop.Shop().All<BenchCard>().LastOrDefault() is { } kept) return kept;
        _standIn = Entry.About(Guid.CreateVersion7(Now), null, StandInBench.Card(), Now, Hand);
        return ShopLedger().Get<BenchCard>(_standIn.Subject);
    }

    /// <summary>What belongs to the shop, with the stand-in where one is used.</summary>
    protected Ledger ShopLedger() => _standIn is null ? Shop.Shop() : Shop.Shop().With([_standIn]);

    /// <summary>Saves what rests on <see cref="BenchOrStandIn"/>.</summary>
    protected void SaveOnBench(params IReadOnlyList<Entry> entries) => Shop.Save(_standIn is null ? entries : [_standIn, .. entries]);

    /// <summary>Whose hand, as last typed in this browser.</summary>
    protected string Hand => Typed.Hand ?? Hands.Of(Http);

    /// <summary>Now, with the shop's offset.</summary>
    protected static DateTimeOffset Now => DateTimeOffset.Now;
}
