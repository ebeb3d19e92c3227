using BenchmarkDotNet.Attributes;
using Portwright.Figures;
using Portwright.Geometry.Views;
using Portwright.Shop.Budgets;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Store.Demo;
using Portwright.Store.Runs;

namespace Portwright.Bench;

/// <summary>A port that was looked into: six sections, three rings, nine balls and flags, twenty-four wall points, four cuts.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class SurveyBench
{
    private Ledger _ledger = Ledger.Empty;
    private readonly KeptRuns _kept = new(null);
    private Reductions _reductions = null!;
    private PortSurvey _survey = null!;
    private PortAtCut _port = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _ledger = Ledger.Of(DemoShop.Entries());
        _reductions = new Reductions(_ledger);
        _port = PortAtCut.Of(_reductions, DemoShop.Featured, null, _kept);
        _survey = _port.Survey;
    }

    [Benchmark]
    public int Survey_from_the_record() => PortSurvey.Of(_ledger, DemoShop.Featured).Stations.Count;

    // From the record, since a survey remembers what was found in it.
    [Benchmark]
    public int Findings_from_the_record() => PortFindings.Of(PortSurvey.Of(_ledger, DemoShop.Featured)).Count;

    [Benchmark]
    public int Port_from_the_record() => PortAtCut.Of(new Reductions(_ledger), DemoShop.Featured, null, _kept).Findings.Count;

    /// <summary>As a page asks that was shown before and nothing saved since.</summary>
    [Benchmark]
    public int Port_asked_for_again() => PortAtCut.Of(_reductions, DemoShop.Featured, null, _kept).Findings.Count;

    [Benchmark]
    public int Document_for_the_porter() => PortDocument.ForThePorter(_port).Parts.Count;

    [Benchmark]
    public int Document_with_the_engineers_parts() => PortDocument.Of(_port).Parts.Count;

    [Benchmark]
    public int Document_for_programs() => PortDocument.Of(_port, null, BudgetDetail.Whole).Parts.Count;

    [Benchmark]
    public int Port_sheet_with_all_maps_as_PDF() => SheetFile.Pdf.Render(_port, PortDocument.Of(_port), UnitSystem.UsCustomary).Length;

    [Benchmark]
    public int Drawings_of_the_page()
    {
        var view = new View(Mirrored: true);
        var station = _survey.At(StationRole.ShortSide)!;
        return Svg.Page(LongViewDrawing.Of(_survey, station.Station.Id, view, UnitSystem.UsCustomary)).Length
            + Svg.Page(SectionDrawing.Of(_survey, station, view, SectionShows.Speeds, UnitSystem.UsCustomary, 340)).Length;
    }
}
