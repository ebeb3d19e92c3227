namespace Portwright.Physics.Uncertainty;

/// <summary>
/// The measurement function Y = f(X1 ... XN) of JCGM 100:2008, 4.1. Written as a small struct it is compiled into the
/// propagation itself and costs no call.
/// </summary>
public interface IMeasurementModel
{
    /// <summary>The result for one set of inputs. A pure function; not a number where the inputs are outside its domain. In the unit of the result.</summary>
    /// <param name="inputs">One number an input, in the unit each has in the model.</param>
    double Evaluate(ReadOnlySpan<double> inputs);
}
