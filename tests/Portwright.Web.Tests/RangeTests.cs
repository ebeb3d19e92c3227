using System.Net;
using System.Text.RegularExpressions;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Tests;

/// <summary>A range that old results stand on is not pulled from under them.</summary>
public sealed class RangeTests : IAsyncLifetime
{
    private readonly RunningWorkbench _workbench = new();
    private readonly HttpClient _client = new(new HttpClientHandler { AllowAutoRedirect = false });
    private Seed _seed = null!;

    public async ValueTask InitializeAsync()
    {
        _seed = Seed.Put(_workbench.Data);
        await _workbench.Start();
        _client.BaseAddress = new Uri(_workbench.Url);
    }

    public ValueTask DisposeAsync()
    {
        _client.Dispose();
        _workbench.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_range_in_use_keeps_its_name()
    {
        var answer = await Save("large", "percent", ("name", "main hole"));
        Assert.Contains("Range large is used by 1 sweep: called main hole, they would not find their meter. Leave it as it is, and add a new range with a new name.", answer, StringComparison.Ordinal);
        Assert.NotNull(Card().RangeNamed("large"));
    }

    [Fact]
    public async Task A_range_in_use_stays_the_kind_of_meter_it_is()
    {
        var answer = await Save("large", "direct", ("name", "large"));
        Assert.Contains("Range large is used by 1 sweep: read as another kind of meter, their results would break.", answer, StringComparison.Ordinal);
        Assert.IsType<PercentCard>(Card().RangeNamed("large")!.Meter);
    }

    [Fact]
    public async Task Better_numbers_of_the_same_meter_are_taken()
    {
        Assert.Equal("", await Save("large", "percent", ("name", "large"), ("full", "310")));
        Assert.Equal(310 * 0.3048 * 0.3048 * 0.3048 / 60, ((PercentCard)Card().RangeNamed("large")!.Meter).FullScaleFlow, 9);
    }

    [Fact]
    public async Task A_range_nobody_used_may_be_called_and_be_what_one_likes()
    {
        Assert.Equal("", await Save("readout", "percent", ("name", "middle")));
        Assert.Equal(["large", "middle"], Card().Ranges.Select(r => r.Name));
        Assert.IsType<PercentCard>(Card().RangeNamed("middle")!.Meter);
    }

    [Fact]
    public async Task A_range_changed_with_the_page_in_millimetres_keeps_the_unit_it_is_read_in()
    {
        _client.DefaultRequestHeaders.Add("Cookie", "portwright.units=si");
        Assert.Equal("", await Save("readout", "direct", ("name", "readout")));
        Assert.Equal(("cfm", 0.1), (Card().RangeNamed("readout")!.Unit, Card().RangeNamed("readout")!.Resolution));
    }

    /// <summary>What a porter's card says: so much flow at 100 percent, set at such a test pressure. The differential is on nobody's card.</summary>
    [Fact]
    public async Task A_percent_range_is_saved_with_what_a_porters_card_says_and_comes_back_as_it_was_typed()
    {
        Assert.Equal("", await Save("readout", "percent", ("name", "middle"), ("full", "240.55"), ("at", "25"), ("differential", "")));
        var range = Card().RangeNamed("middle")!;
        var meter = Assert.IsType<PercentCard>(range.Meter);
        Assert.Equal((true, false), (meter.DifferentialAssumed, meter.PressureAssumed));
        Assert.Equal(["the differential at its full mark", "the air it was set in"], AssumedScale.Words(range));
        Assert.Contains("percent of 240.6 cfm, marks in percent of flow; assumed: the differential at its full mark, the air it was set in", WebUtility.HtmlDecode(await _client.GetStringAsync("/bench")), StringComparison.Ordinal);
        var form = await Form("middle", "percent");
        Assert.Equal(("240.55", "25.00", ""), (form["full"], form["at"], form["differential"]));
    }

    [Fact]
    public async Task How_the_meter_takes_its_air_is_asked_and_kept()
    {
        Assert.Equal("", await Save("readout", "percent", ("name", "middle"), ("draw-inlet", "Room"), ("blow-inlet", "Room")));
        Assert.Equal((MeterInlet.Room, MeterInlet.Room), (Card().RangeNamed("middle")!.DrawInlet, Card().RangeNamed("middle")!.BlowInlet));
        Assert.Equal("", await Save("middle", "percent", ("accuracy", "0.8")));
        Assert.Equal((MeterInlet.Room, MeterInlet.Room), (Card().RangeNamed("middle")!.DrawInlet, Card().RangeNamed("middle")!.BlowInlet));
    }

    [Fact]
    public async Task The_doubt_of_a_plate_stands_on_the_card_as_the_certificate_has_it()
    {
        Assert.Equal("", await Send("/bench/plate", "/bench/plate", ("name", "plate 9"), ("area", "1.55"), ("doubt", ".0032")));
        Assert.Contains("1.5500 ± 0.0032 in²", WebUtility.HtmlDecode(await _client.GetStringAsync("/bench")), StringComparison.Ordinal);
    }

    [Fact]
    public void Sweeps_leaks_readings_calibrations_and_morning_checks_of_any_job_count_and_hidden_ones_too()
    {
        using var journal = Journal.Open(_workbench.Data);
        var other = Guid.NewGuid();
        var sweep = Seed.NewSweep(journal, other, _seed.Bench, Guid.NewGuid(), 3, asked: false);
        var air = new RoomAir(Typed.Of(29.9, "inHg"), Typed.Of(70, "°F"), null);
        var plate = new PlateReading("plate 2", "Readout", Typed.Of(100, "cfm"), Typed.Of(28, "inH2O"));
        journal.Append(
        [
            Entry.About(Guid.NewGuid(), other, new FlowReading(sweep, Typed.Of(0.1, "in"), Typed.Of(50, "cfm"), "readout"), Seed.Now),
            Entry.About(Guid.NewGuid(), null, new Calibration(_seed.Bench, "readout", new DateOnly(2026, 3, 2), [plate], air), Seed.Now),
            Entry.About(Guid.NewGuid(), null, new MorningCheck(_seed.Bench, new DateOnly(2026, 3, 2), air, null, [plate]), Seed.Now),
            Entry.About(Guid.NewGuid(), null, new MorningCheck(_seed.Bench, new DateOnly(2026, 3, 3), air, plate, []), Seed.Now),
        ]);
        journal.Append(Amend.Hide(Ledger.Of(journal.ReadAll()).Get<Sweep>(sweep), Seed.Now, "", "put away"));
        var record = Ledger.Of(journal.ReadAll());
        var use = RangeUse.Of(record, _seed.Bench, "readout");
        Assert.Equal((1, 1, 2), (use.Sweeps, use.Calibrations, use.MorningChecks));
        var readout = Seed.Card().RangeNamed("readout")!;
        Assert.Equal(
            "Range readout is used by 1 sweep, 1 calibration and 2 morning checks: without it they would have no meter. Leave it as it is, and add a new range with a new name.",
            use.Against(readout, null));
        Assert.Null(use.Against(readout, readout with { Resolution = 0.5 }));
        Assert.Equal(2, RangeUse.Of(record, _seed.Bench, "large").Sweeps);
        Assert.False(RangeUse.Of(record, Guid.NewGuid(), "large").IsUsed);
    }

    [Fact]
    public void Reading_a_plate_along_a_tube_instead_of_as_a_pressure_is_another_kind()
    {
        var old = new RangeCard("9", new PlenumPlateCard(0.05, 0.6), "inH2O", 0.1, 0.01);
        var use = new RangeUse("9", 3, 0, 0);
        Assert.Contains("used by 3 sweeps", use.Against(old, old with { Meter = new PlenumPlateCard(0.05, 0.6, new TubeCard(1000, Math.PI / 2)), Unit = "in" }), StringComparison.Ordinal);
        Assert.Null(use.Against(old, old with { Meter = new PlenumPlateCard(0.0502, 0.61) }));
        Assert.Null(new RangeUse("9", 0, 0, 0).Against(old, null));
    }

    private BenchCard Card() => _workbench.Read(j => Ledger.Of(j.ReadShop()).Get<BenchCard>(_seed.Bench).Fact);

    /// <summary>Sends the form as it stands, with some boxes typed over; the sentence that came back, empty where it was saved.</summary>
    private async Task<string> Save(string range, string kind, params (string Name, string Value)[] typed)
    {
        var path = $"/bench/range?kind={kind}&name={range}";
        List<(string Name, string Value)> all = kind == "percent" && range == "readout" ? [("full", "300"), ("at", "28"), ("differential", "6"), .. typed] : [.. typed];
        return await Send(path, path, [.. all]);
    }

    private Task<Dictionary<string, string>> Form(string range, string kind) => FormOf($"/bench/range?kind={kind}&name={range}");

    private async Task<Dictionary<string, string>> FormOf(string path)
    {
        var html = await _client.GetStringAsync(path);
        var form = Regex.Match(html, "<form method=\"post\"[^>]*class=\"stack\".*?</form>", RegexOptions.Singleline).Value;
        var boxes = Regex.Matches(form, "<input[^>]*>").Select(i => (Attribute(i.Value, "name"), Attribute(i.Value, "value")));
        var lists = Regex.Matches(form, "<select.*?</select>", RegexOptions.Singleline).Select(s => (Attribute(s.Value, "name"), Attribute(Regex.Match(s.Value, "<option[^>]* selected[^>]*>").Value is { Length: > 0 } chosen ? chosen : Regex.Match(s.Value, "<option[^>]*>").Value, "value")));
        return boxes.Concat(lists).Where(f => f.Item1.Length > 0).DistinctBy(f => f.Item1).ToDictionary();
    }

    private async Task<string> Send(string from, string to, params (string Name, string Value)[] typed)
    {
        var fields = await FormOf(from);
        foreach (var (name, value) in typed)
        {
            fields[name] = value;
        }

        using var content = new FormUrlEncodedContent(fields);
        using var answer = await _client.PostAsync(to, content);
        return answer.StatusCode == HttpStatusCode.Redirect ? "" : WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }

    private static string Attribute(string input, string name) => WebUtility.HtmlDecode(Regex.Match(input, $"\\s{name}=\"([^\"]*)\"").Groups[1].Value);
}
