using Portwright.Conventions;
using Portwright.Engine.Runs;

namespace Portwright.Engine.Tests;

public sealed class EngineConventions() : RoomConventions(typeof(EngineRun).Assembly);
