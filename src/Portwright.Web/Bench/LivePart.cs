using Microsoft.AspNetCore.Components;
using Portwright.Shop.Units;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Bench;

/// <summary>
/// A part of a page that is drawn anew when something is saved to its job, from this page or another. Readings may come faster than a
/// page can be drawn: those that come while one is due are drawn with it.
/// </summary>
public abstract class LivePart : ComponentBase, IDisposable
{
    private static readonly TimeSpan Gathering = TimeSpan.FromMilliseconds(40);
    private int _due;
    private bool _gone;

    [Parameter, EditorRequired] public Guid Job { get; set; }

    [Parameter, EditorRequired] public Guid Sweep { get; set; }

    [Parameter] public UnitSystem Units { get; set; }

    [Inject] protected ShopRecord Shop { get; set; } = null!;

    /// <summary>Reads what the part shows.</summary>
    protected abstract void Read();

    protected override void OnInitialized()
    {
        Read();
        if (RendererInfo.IsInteractive)
        {
            Shop.Changed += Saved;
        }
    }

    public void Dispose()
    {
        _gone = true;
        Shop.Changed -= Saved;
        GC.SuppressFinalize(this);
    }

    private void Saved(Guid? job)
    {
        if ((job is null || job == Job) && Interlocked.Exchange(ref _due, 1) == 0)
        {
            _ = Draw();
        }
    }

    private async Task Draw()
    {
        await Task.Delay(Gathering);
        await InvokeAsync(() =>
        {
            Volatile.Write(ref _due, 0);
            if (!_gone)
            {
                Read();
                StateHasChanged();
            }
        });
    }
}
