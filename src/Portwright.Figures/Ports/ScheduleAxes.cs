using Portwright.Geometry.Schedules;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Axes of the area schedule: distance with the stations' letters under it, area at the left, share of the valve at the right.</summary>
internal sealed class ScheduleAxes
{
    private readonly FigureSize _size;
    private readonly UnitSystem _units;
    private readonly IReadOnlyList<SurveyedStation> _stations;
    private readonly Scale _along, _area;
    private readonly double _length, _low, _high;
    private readonly double? _valve;

    public ScheduleAxes(PortSurvey survey, AreaSchedule schedule, IReadOnlyList<SurveyedStation> sections, IReadOnlyList<AreaTarget> target, FigureSize size, UnitSystem units)
    {
        (_size, _units, _stations) = (size, units, survey.Stations);
        _valve = survey.Sheet.Port.Fact.Valve is { } valve ? Math.PI / 4 * valve.HeadDiameter * valve.HeadDiameter : null;
        var t = size.Text;
        var tops = sections.Select(s => s.Section!.Area.Value + s.Section.Area.Expanded()).Concat(target.Select(p => p.To));
        var lows = sections.Select(s => s.Section!.Area.Value - s.Section.Area.Expanded()).Concat(target.Select(p => p.From));
        var (low, high) = (lows.Min(), tops.Max());
        var air = Math.Max(0.15 * (high - low), 0.04 * high);
        (_low, _high) = (Math.Max(0, low - air), high + air);
        _length = Math.Max(survey.Centreline.Length, schedule.Stations[^1].Distance);
        Left = 3.2 * t;
        Right = size.Width - (_valve is null ? 1.2 * t : 3.4 * t);
        Bottom = size.Height - 4.2 * t;
        _along = new Scale(0, _length, Left, Right);
        _area = new Scale(_low, _high, Bottom, 2 * t);
    }

    public double Left { get; }

    public double Right { get; }

    public double Bottom { get; }

    public Place At(double distance, double area) => new(_along.At(distance), _area.At(area));

    public void Draw(Pen pen)
    {
        var t = _size.Text;
        var hair = new Stroke(Role.Hairline, _size.Thick(1));
        var unit = Unit.Default(Dimension.Area, _units);
        pen.Text(2, 1.1 * t, $"area, {unit.Name}", t, Role.Quiet);
        var step = Scale.Step(unit.FromSi(_high - _low), 5);
        foreach (var value in Scale.Ticks(unit.FromSi(_low), unit.FromSi(_high), step))
        {
            var y = _area.At(unit.ToSi(value));
            pen.Line(Left, y, Right, y, hair);
            pen.Text(Left - 0.5 * t, y + 0.35 * t, Print.Bare(unit.ToSi(value), Dimension.Area, _units, Decimals(step)), t, Role.Quiet, Anchor.End);
        }

        if (_valve is { } valve)
        {
            pen.Text(_size.Width - 2, 1.1 * t, "of valve, by area", t, Role.Quiet, Anchor.End);
            var share = Scale.Step((_high - _low) / valve * 100, 5);
            foreach (var percent in Scale.Ticks(_low / valve * 100, _high / valve * 100, share))
            {
                var y = _area.At(percent / 100 * valve);
                pen.Line(Right, y, Right + 0.3 * t, y, new Stroke(Role.Quiet, _size.Thick(1)));
                pen.Text(Right + 0.5 * t, y + 0.35 * t, $"{Print.Bare(percent / 100, Dimension.Fraction, _units, Decimals(share))}%", t, Role.Quiet);
            }
        }

        pen.Line(Left, Bottom, Right, Bottom, new Stroke(Role.Ink, _size.Thick(1.2)));
        Under(pen, t);
    }

    private void Under(Pen pen, double t)
    {
        var last = double.NegativeInfinity;
        foreach (var station in _stations.Where(s => s.Distance >= 0 && s.Distance <= _length))
        {
            var x = _along.At(station.Distance);
            pen.Line(x, 2 * t, x, Bottom + 0.4 * t, new Stroke(Role.Hairline, _size.Thick(1), LineType.LongDashDot));
            var wide = Lettering.Width(station.Letter, t, Weight.SemiBold);
            if (x - wide / 2 < last + 3) continue;
            pen.Text(x, Bottom + 1.4 * t, station.Letter, t, station.Section is null ? Role.Quiet : Role.Ink, Anchor.Middle, Weight.SemiBold);
            last = x + wide / 2;
        }

        var unit = Unit.Default(Dimension.Length, _units);
        var step = Scale.Step(unit.FromSi(_length), 6);
        foreach (var value in Scale.Ticks(0, unit.FromSi(_length), step))
            pen.Text(_along.At(unit.ToSi(value)), Bottom + 2.7 * t, Print.Bare(unit.ToSi(value), Dimension.Length, _units, Decimals(step)), t, Role.Quiet, Anchor.Middle);
        pen.Text((Left + Right) / 2, Bottom + 3.9 * t, $"{unit.Name} from the flange along the centreline", t, Role.Quiet, Anchor.Middle);
    }

    private static int Decimals(double step) => Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 4);
}
