using Portwright.Shop.Record;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Runs;

/// <summary>The intake and the exhaust port that stand for all the engine's cylinders in a run, each at one cut. One of them at least was swept.</summary>
/// <param name="Intake">Null where no intake was swept.</param>
/// <param name="Exhaust">Null where no exhaust was swept.</param>
public sealed record EnginePair(PortSurvey? Intake, PortSurvey? Exhaust)
{
    public PortSurvey? Of(PortKind kind) => kind == PortKind.Intake ? Intake : Exhaust;
}
