using BenchmarkDotNet.Attributes;
using Portwright.Figures;
using Portwright.Geometry.Views;
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
    private PortSurvey _survey = null!;
    private PortAtCut _port = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _ledger = Ledger.Of(DemoShop.Entries());
        _port = PortAtCut.Of(new Reductions(_ledger), DemoShop.Featured, null, new KeptRuns(null));
        _survey = _port.Survey;
    }

    [Benchmark]
    public int Survey_from_the_record() => PortSurvey.Of(_ledger, DemoShop.Featured).Stations.Count;

    [Benchmark]
    public int Findings_of_the_whole_catalogue() => PortFindings.Of(_survey).Count;

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
