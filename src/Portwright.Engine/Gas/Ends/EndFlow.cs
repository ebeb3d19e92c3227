namespace Portwright.Engine.Gas.Ends;

/// <summary>Flow through a pipe's end a unit of area, counted outwards.</summary>
/// <param name="Mass">kg/(s m2).</param>
/// <param name="Momentum">Pressure included, Pa: the same seen from either side.</param>
/// <param name="Energy">W/m2.</param>
/// <param name="Burnt">kg/(s m2).</param>
internal readonly record struct EndFlow(double Mass, double Momentum, double Energy, double Burnt);
