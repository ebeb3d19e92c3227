namespace Portwright.Physics.Uncertainty;

/// <summary>What sort of physical cause a contribution to an uncertainty has, so that a budget can be read by kind.</summary>
public enum ContributionKind
{
    /// <summary>None of the others.</summary>
    Other,

    /// <summary>Scatter of repeated readings within one set-up. More readings make it smaller.</summary>
    Repeat,

    /// <summary>Scatter between set-ups: the head taken off the bench and put back. More readings do not make it smaller.</summary>
    SetUp,

    /// <summary>The certificate of a plate or meter and the fit that used it.</summary>
    Calibration,

    /// <summary>Change of the bench since its calibration.</summary>
    Drift,

    /// <summary>The air that goes round the test piece.</summary>
    Leak,

    /// <summary>Barometer, temperature and humidity.</summary>
    Weather,

    /// <summary>The smallest step a scale or display shows.</summary>
    Resolution,

    /// <summary>Lengths, diameters and angles.</summary>
    Geometry,
}
