using Portwright.Shop.Units;
using Portwright.Store;

namespace Portwright.Web;

/// <summary>What the workbench is started with.</summary>
/// <param name="Journal">The shop's record, open.</param>
/// <param name="DataFolder">The folder the record lives in; the workbench keeps its keys there, readable by the owner alone.</param>
/// <param name="Port">TCP port on 127.0.0.1; 0 takes a free one.</param>
/// <param name="Units">What a reader sees who has not chosen; the page's own switch is remembered in the browser.</param>
/// <param name="Sums">Does the sums of the page of sums; null where the program came without them.</param>
/// <param name="Demo">Brings the demo shop into the record; null where the program came without it.</param>
public sealed record WorkbenchOptions(
    Journal Journal,
    string DataFolder,
    int Port = 5190,
    UnitSystem Units = UnitSystem.UsCustomary,
    Action<Journal>? Demo = null,
    Sums.ISumDesk? Sums = null);
