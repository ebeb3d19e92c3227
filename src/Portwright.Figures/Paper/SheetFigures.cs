using Portwright.Geometry.Views;
using Portwright.Shop.Ports;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>The drawing of a document's figure: one place for page, file and paper.</summary>
public static class SheetFigures
{
    private const int MostAbreast = 3;

    /// <summary>Draws a figure of a port's document as wide as asked. Long view and sections take the height they need.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A kind of figure that is not known here.</exception>
    /// <exception cref="InvalidOperationException">The figure shows what this port has not.</exception>
    public static Drawing Draw(PortAtCut port, Figure figure, UnitSystem units, FigureSize size)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(size);
        var sheet = port.Sheet;
        var drawing = figure.Kind switch
        {
            FigureKind.FlowOverLift => FlowOverLift.Draw(FlowPlot.Of(sheet, port.Engine.Wanted, units: units), size, units),
            FigureKind.Coefficients => DischargeCoefficients.Draw(sheet.Windows, sheet.ThroatTakesOver / sheet.Port.Fact.Valve?.HeadDiameter, size, units),
            FigureKind.LongView => LongView(port, units, size),
            FigureKind.AreaSchedule => AreaScheduleFigure.Of(port.Survey, units, size, AreaTarget.Of(port.Survey)),
            FigureKind.Section => Section(port.Survey, figure, units, size),
            FigureKind.TorqueAndPower => TorqueAndPower.Of(EngineSpeed.Of(Answer(port, figure)), units, size),
            FigureKind.WorthOverLift => WorthOverLift.Of(Answer(port, figure), port.Engine.Kind, units, size),
            _ => throw new ArgumentOutOfRangeException(nameof(figure), figure.Kind, "A kind of figure that is not known here."),
        };
        // Long view and section tell every place in words, more than the sentence under them does.
        return figure.Kind is FigureKind.LongView or FigureKind.Section ? drawing : drawing with { Description = figure.Instead.In(units) };
    }

    /// <summary>The same for a page, laid out for a desk and for a phone.</summary>
    public static (Drawing Wide, Drawing Narrow) ForPage(PortAtCut port, Figure figure, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var (high, low) = figure.Kind switch { FigureKind.Coefficients => (380, 300), FigureKind.AreaSchedule => (360, 300), _ => (FigureSize.Wide.Height, FigureSize.Narrow.Height) };
        return (Draw(port, figure, units, FigureSize.Wide with { Height = high }), Draw(port, figure, units, FigureSize.Narrow with { Height = low }));
    }

    private static EngineAnswer Answer(PortAtCut port, Figure figure) =>
        port.Engine.Answer ?? throw new InvalidOperationException($"{figure.Key} shows an engine run, and {port.Sheet.Port.Fact.Name} has none kept at this cut.");

    private static View ViewOf(PortSurvey survey) => new(Mirrored: survey.Sheet.Port.Fact.Mirrored);

    private static Drawing LongView(PortAtCut port, UnitSystem units, FigureSize size)
    {
        // It has a layout for a desk and one for a phone; on paper the one whose letters come out as asked is shrunk.
        var room = size.Width * 15 / size.Text;
        if (room < 560) room = Math.Max(280, size.Width * 12.5 / size.Text);
        return Moved.Scaled(LongViewDrawing.Of(port.Survey, null, ViewOf(port.Survey), units, room, findings: port.Findings), size.Width / room);
    }

    /// <summary>What was observed at a station, a drawing each, up to three abreast.</summary>
    private static Drawing Section(PortSurvey survey, Figure figure, UnitSystem units, FigureSize size)
    {
        var station = survey.Stations.FirstOrDefault(s => s.Station.Id == figure.Station)
            ?? throw new InvalidOperationException($"{figure.Key} shows a section that {survey.Sheet.Port.Fact.Name} has not.");
        var gap = size.Text;
        var abreast = Math.Clamp((int)Math.Round(size.Width / (22 * size.Text)), 1, MostAbreast);
        var each = (size.Width - (abreast - 1) * gap) / abreast;
        var room = Math.Max(300, each * 12.5 / size.Text);
        var drawn = Shows(station).Select(s => Moved.Scaled(SectionDrawing.Of(survey, station, ViewOf(survey), s, units, room), each / room)).ToList();
        var pen = new Pen();
        var y = 0.0;
        foreach (var row in drawn.Chunk(abreast))
        {
            for (var i = 0; i < row.Length; i++) pen.Put(Moved.To(row[i], i * (each + gap), y));
            y += row.Max(d => d.Height);
        }

        var across = Math.Min(abreast, drawn.Count);
        return pen.Done(across * each + (across - 1) * gap, y, $"Section {station.Letter}", string.Join(' ', drawn.Select(d => d.Description)));
    }

    /// <summary>At most three, what matters most first. Sound metal is drawn where nothing else was observed: its numbers stand in a table.</summary>
    private static List<SectionShows> Shows(SurveyedStation station)
    {
        List<SectionShows> shows = [];
        if (station.Ring is not null) shows.Add(SectionShows.Speeds);
        if (station.Balls.Count > 0) shows.Add(SectionShows.Balls);
        if (station.Walls.Any(w => w.Stops)) shows.Add(SectionShows.Walls);
        if (station.Flags.Count > 0 && shows.Count < MostAbreast) shows.Add(SectionShows.Flags);
        return shows.Count > 0 ? shows : [SectionShows.Walls];
    }
}
