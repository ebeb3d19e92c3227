namespace Portwright.Web.Shell;

/// <summary>A page with a part that is kept up to date by the server. Only such pages load the script and open a connection.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class LivePageAttribute : Attribute;
