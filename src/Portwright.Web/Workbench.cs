using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Portwright.Web.Security;
using Portwright.Web.Shell;
using Portwright.Web.Upkeep;

namespace Portwright.Web;

/// <summary>The workbench: pages in the browser, for this machine alone.</summary>
public static class Workbench
{
    /// <summary>Builds the server; <see cref="WebApplication.Run"/> starts it. It listens on 127.0.0.1 and nowhere else.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A port outside 0 to 65535.</exception>
    public static WebApplication Build(WorkbenchOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.Port is < IPEndPoint.MinPort or > IPEndPoint.MaxPort)
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.Port, "Port: 0 to 65535.");
        }

        // Numbers are printed and read in one way, whatever the machine's language.
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

        // An empty builder: no settings file and no environment variable can open the server to the network.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = System.Reflection.Assembly.GetEntryAssembly()?.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            WebRootPath = "wwwroot",
            EnvironmentName = "Production",
        });
        // A built, unpublished program finds its files in the source folders; a published one has them in wwwroot.
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        builder.Logging.AddSimpleConsole().SetMinimumLevel(LogLevel.Warning)
            // The keys are guarded by the folder, which its owner alone may enter.
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = UploadLimits.Request;
            kestrel.Listen(IPAddress.Loopback, options.Port);
        });
        Services(builder.Services, options);

        var app = builder.Build();
        app.UseHostFiltering();
        app.UseMiddleware<OneOrigin>();
        app.UseMiddleware<OriginGuard>();
        app.UseMiddleware<PageHeaders>();
        app.UseMiddleware<UploadLimits>();
        app.UseMiddleware<Trouble>();
        app.UseStatusCodePages(Trouble.Page);
        app.UseWebSockets();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = "'none'");
        Endpoints.Everything.Map(app);
        return app;
    }

    private static void Services(IServiceCollection services, WorkbenchOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton(options.Journal);
        services.AddSingleton<ShopRecord>();
        services.AddSingleton<UploadShelf>();
        services.AddSingleton<Engine.RunningEngines>();
        services.AddRouting();
        services.AddHostFiltering(o =>
        {
            o.AllowedHosts = ["127.0.0.1", "localhost"];
            o.AllowEmptyHosts = false;
            o.IncludeFailureMessage = false;
        });
        services.AddAntiforgery(o =>
        {
            o.Cookie.Name = "portwright.form";
            o.Cookie.SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict;
            o.HeaderName = "X-Form-Token";
        });
        services.AddDataProtection().SetApplicationName("Portwright").PersistKeysToFileSystem(KeyFolder(options.DataFolder));
        services.AddSingleton<OpenCircuits>();
        services.AddSingleton<CircuitHandler, CircuitCount>();
        services.AddHttpContextAccessor();
        services.AddRazorComponents().AddInteractiveServerComponents(o =>
        {
            o.DisconnectedCircuitMaxRetained = 8;
            o.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(3);
            o.JSInteropDefaultCallTimeout = TimeSpan.FromSeconds(20);
        });
    }

    private static DirectoryInfo KeyFolder(string dataFolder)
    {
        var path = Path.Combine(dataFolder, "keys");
        return OperatingSystem.IsWindows()
            ? Directory.CreateDirectory(path)
            : Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
