using Portwright.Conventions;

namespace Portwright.Geometry.Tests;

public sealed class GeometryConventions() : RoomConventions(typeof(Outline).Assembly);
