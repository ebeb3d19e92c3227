using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;

namespace Portwright.Web.Tests;

/// <summary>Who may talk to the workbench.</summary>
public sealed class GuardTests : IClassFixture<StandingWorkbench>, IDisposable
{
    private readonly RunningWorkbench _workbench;
    private readonly HttpClient _client = new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
    private readonly Seed _seed;

    public GuardTests(StandingWorkbench standing)
    {
        _workbench = standing.Bench;
        _seed = Seed.Put(_workbench.Data);
        _client.BaseAddress = new Uri(_workbench.Url);
    }

    public void Dispose() => _client.Dispose();

    [Fact]
    public void It_listens_on_this_machine_alone()
    {
        var port = _workbench.Port;
        foreach (var address in Dns.GetHostAddresses(Dns.GetHostName()).Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a)))
        {
            using var socket = new TcpClient();
            Assert.ThrowsAny<SocketException>(() => socket.Connect(address, port));
        }

        // Were it bound to every address, binding the wildcard for ourselves would be refused or 127.0.0.2 answered.
        if (OperatingSystem.IsLinux())
        {
            using var other = new TcpClient();
            Assert.ThrowsAny<SocketException>(() => other.Connect(IPAddress.Parse("127.0.0.2"), port));
        }
    }

    [Theory]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("localhost", HttpStatusCode.TemporaryRedirect)]
    [InlineData("elsewhere.example", HttpStatusCode.BadRequest)]
    [InlineData("127.0.0.1.elsewhere.example", HttpStatusCode.BadRequest)]
    [InlineData("localhost.elsewhere.example", HttpStatusCode.BadRequest)]
    public async Task Only_our_own_host_name_is_answered(string host, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = $"{host}:{_workbench.Port}";
        using var answer = await _client.SendAsync(request);
        Assert.Equal(expected, answer.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/bench/range?name=a%20b&kind=percent")]
    [InlineData("//elsewhere.example/x")]
    public async Task Localhost_leads_to_the_one_address_readings_are_held_under(string path)
    {
        var answer = await Raw($"GET {path} HTTP/1.1\r\nHost: localhost:{_workbench.Port}\r\nConnection: close\r\n\r\n");
        Assert.StartsWith("HTTP/1.1 307", answer, StringComparison.Ordinal);
        Assert.Contains($"\r\nLocation: http://127.0.0.1:{_workbench.Port}{path}\r\n", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_sent_to_localhost_is_not_led_elsewhere()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/look") { Content = new FormUrlEncodedContent([new("theme", "lamp")]) };
        request.Headers.Host = $"localhost:{_workbench.Port}";
        using var answer = await _client.SendAsync(request);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task A_request_without_a_host_is_refused()
    {
        Assert.StartsWith("HTTP/1.1 400", await Raw("GET / HTTP/1.1\r\nConnection: close\r\n\r\n"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 400", await Raw("GET / HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://elsewhere.example")]
    [InlineData("null")]
    [InlineData("http://127.0.0.1:1")]
    public async Task A_page_from_elsewhere_is_refused(string origin)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Add("Origin", origin);
        using var answer = await _client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("http://elsewhere.example")]
    [InlineData("null")]
    public async Task The_live_connection_is_refused_to_anything_but_our_own_page(string? origin)
    {
        using var socket = new ClientWebSocket();
        if (origin is not null)
        {
            socket.Options.SetRequestHeader("Origin", origin);
        }

        var refused = await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(new Uri($"ws://127.0.0.1:{_workbench.Port}/_blazor"), default));
        Assert.Contains("403", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_live_connection_is_open_to_our_own_page()
    {
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", _workbench.Url);
        await socket.ConnectAsync(new Uri($"ws://127.0.0.1:{_workbench.Port}/_blazor"), default);
        Assert.Equal(WebSocketState.Open, socket.State);
    }

    [Theory]
    [InlineData("cross-site")]
    [InlineData("same-site")]
    public async Task A_form_sent_from_another_site_is_refused(string site)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/look") { Content = new FormUrlEncodedContent([new("theme", "lamp")]) };
        request.Headers.Add("Sec-Fetch-Site", site);
        using var answer = await _client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        foreach (var (path, handler) in new[] { ("/look", ""), ("/", "start"), ($"/job/{_seed.Job}", "add-head"), ($"/cut/{_seed.Cut0}/photo", ""), ("/bench/card", "card"), ("/import", "send") })
        {
            using var form = new FormUrlEncodedContent([new("theme", "lamp"), new("_handler", handler), new("head", "x"), new("cylinders", "4")]);
            using var answer = await _client.PostAsync(path, form);
            Assert.True(answer.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.UnsupportedMediaType, $"{path}: {answer.StatusCode}");
        }

        Assert.Single(_workbench.Read(j => j.ReadJob(_seed.Job).Select(e => e.Fact).OfType<Shop.Record.Head>().ToList()));
    }

    [Fact]
    public async Task A_reading_without_its_token_is_refused_and_not_saved()
    {
        var body = $$"""{"number":"{{Guid.NewGuid()}}","lift":"0.05 in","text":"12","at":"2026-11-25T10:00:00+00:00"}""";
        foreach (var type in new[] { "application/json", "text/plain", "application/x-www-form-urlencoded" })
        {
            using var content = new StringContent(body, Encoding.UTF8, new MediaTypeHeaderValue(type));
            using var answer = await _client.PostAsync($"/sweep/{_seed.Sweep}/reading", content);
            Assert.True(answer.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.UnsupportedMediaType, $"{type}: {answer.StatusCode}");
        }

        Assert.Empty(_workbench.Read(j => BenchPage.Readings(j, _seed.Job)));
    }

    [Fact]
    public async Task A_script_whose_token_is_old_is_told_so_by_a_code_and_gets_a_fresh_one()
    {
        var body = $$"""{"number":"{{Guid.NewGuid()}}","lift":"0.05 in","text":"12","at":"2026-11-25T10:00:00+00:00"}""";
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var refused = await _client.PostAsync($"/sweep/{_seed.Sweep}/reading", content);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        using var said = JsonDocument.Parse(await refused.Content.ReadAsStringAsync());
        Assert.Equal("form-token", said.RootElement.GetProperty("code").GetString());
        Assert.Contains("too old", said.RootElement.GetProperty("problem").GetString(), StringComparison.Ordinal);

        using var fresh = await _client.GetAsync("/form-token");
        Assert.Contains("no-store", fresh.Headers.GetValues("Cache-Control").Single(), StringComparison.Ordinal);
        using var token = JsonDocument.Parse(await fresh.Content.ReadAsStringAsync());
        using var again = new HttpRequestMessage(HttpMethod.Post, $"/sweep/{_seed.Sweep}/reading") { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        again.Headers.Add("Cookie", fresh.Headers.GetValues("Set-Cookie").Select(c => c.Split(';')[0]));
        again.Headers.Add("X-Form-Token", token.RootElement.GetProperty("token").GetString());
        using var saved = await _client.SendAsync(again);
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
    }

    [Fact]
    public async Task A_script_is_told_in_a_sentence_what_is_wrong()
    {
        using var fresh = await _client.GetAsync("/form-token");
        using var token = JsonDocument.Parse(await fresh.Content.ReadAsStringAsync());
        foreach (var (path, body, status, words) in new[]
        {
            ($"/sweep/{Guid.NewGuid()}/reading", $$"""{"number":"{{Guid.NewGuid()}}","lift":"0.05 in","text":"12","at":"2026-11-25T10:00:00+00:00"}""", HttpStatusCode.NotFound, "nothing at this address"),
            ($"/sweep/{_seed.Sweep}/reading", "{\"number\":", HttpStatusCode.BadRequest, "cannot read what this page sent"),
        })
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
            request.Headers.Add("Cookie", fresh.Headers.GetValues("Set-Cookie").Select(c => c.Split(';')[0]));
            request.Headers.Add("X-Form-Token", token.RootElement.GetProperty("token").GetString());
            using var answer = await _client.SendAsync(request);
            Assert.Equal(status, answer.StatusCode);
            using var said = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
            Assert.Contains(words, said.RootElement.GetProperty("problem").GetString(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/bench")]
    [InlineData("/_content/Portwright.Web/workbench.css")]
    [InlineData("/not-to-be-found")]
    public async Task Every_answer_carries_the_strict_policy(string path)
    {
        using var answer = await _client.GetAsync(path);
        var policies = answer.Headers.GetValues("Content-Security-Policy").ToList();
        Assert.Contains(policies, p => p.Contains("default-src 'none'", StringComparison.Ordinal) && p.Contains("script-src 'self';", StringComparison.Ordinal)
            && p.Contains("style-src 'self';", StringComparison.Ordinal) && p.Contains("frame-ancestors 'none'", StringComparison.Ordinal));
        Assert.All(policies, p => Assert.DoesNotContain("unsafe", p, StringComparison.Ordinal));
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Opener-Policy")));
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Theory]
    [InlineData("/../record.db")]
    [InlineData("/..%2f..%2frecord.db")]
    [InlineData("/%2e%2e/record.db")]
    [InlineData("/..%5crecord.db")]
    [InlineData("/record.db")]
    [InlineData("/keys/")]
    [InlineData("/portwright.dll")]
    [InlineData("/appsettings.json")]
    [InlineData("/photo/..%2f..%2frecord.db")]
    [InlineData("/photo/record.db")]
    [InlineData("/fonts/..%2frecord.db")]
    public async Task No_path_reaches_a_file_of_the_machine(string path)
    {
        var answer = await Raw($"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{_workbench.Port}\r\nConnection: close\r\n\r\n");
        Assert.Matches("^HTTP/1.1 40[04]", answer);
        Assert.DoesNotContain("SQLite format", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("https://elsewhere.example/")]
    public async Task Choosing_a_look_never_leads_to_another_machine(string back)
    {
        var (token, cookie) = await Token("/");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/look")
        {
            Content = new FormUrlEncodedContent([new("theme", "lamp"), new("back", back), new("__RequestVerificationToken", token)]),
        };
        request.Headers.Add("Cookie", cookie);
        using var answer = await _client.SendAsync(request);
        Assert.Equal("/", answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_photo_is_judged_by_its_bytes_and_by_its_size()
    {
        byte[] png = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13, (byte)'I', (byte)'H', (byte)'D', (byte)'R', 0, 0, 0, 1, 0, 0, 0, 1, 8, 6, 0, 0, 0];
        using var good = await Photo(png, "cut.png");
        Assert.Equal(HttpStatusCode.Redirect, good.StatusCode);
        using var page = await Photo("<html><script>alert(1)</script>"u8.ToArray(), "cut.png");
        Assert.Equal(HttpStatusCode.BadRequest, page.StatusCode);
        Assert.Contains("not a JPEG, PNG or WebP", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var large = await Photo(new byte[21_000_000], "cut.png");
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        Assert.Contains("at most 20 MB", await large.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        var photo = Assert.Single(_workbench.Read(j => j.ReadJob(_seed.Job).Select(e => e.Fact).OfType<Shop.Record.Photo>().ToList()));
        using var shown = await _client.GetAsync($"/photo/{photo.Content}");
        Assert.Equal("image/png", shown.Content.Headers.ContentType!.MediaType);
        Assert.Equal(png, await shown.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task Fault_pages_tell_no_secrets()
    {
        using var answer = await _client.GetAsync($"/job/{Guid.NewGuid()}");
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("nothing at this address", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> Photo(byte[] bytes, string name)
    {
        var (token, cookie) = await Token($"/port/{_seed.Intake}");
        using var form = new MultipartFormDataContent { { new ByteArrayContent(bytes), "photo", name }, { new StringContent(token), "__RequestVerificationToken" } };
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/cut/{_seed.Cut0}/photo") { Content = form };
        request.Headers.Add("Cookie", cookie);
        return await _client.SendAsync(request);
    }

    private async Task<(string Token, string Cookie)> Token(string path)
    {
        using var answer = await _client.GetAsync(path);
        var html = await answer.Content.ReadAsStringAsync();
        var token = System.Text.RegularExpressions.Regex.Match(html, "name=\"__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value;
        return (token, string.Join("; ", answer.Headers.GetValues("Set-Cookie").Select(c => c.Split(';')[0])));
    }

    private async Task<string> Raw(string request)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, _workbench.Port);
        var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream, Encoding.Latin1);
        return await reader.ReadToEndAsync();
    }
}
