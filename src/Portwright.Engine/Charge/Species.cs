namespace Portwright.Engine.Charge;

/// <summary>One gas by its molar mass and the coefficients of its heat capacity.</summary>
/// <param name="MolarMass">kg/mol.</param>
/// <param name="Low">a1 to a7 up to 1000 K.</param>
/// <param name="High">a1 to a7 from 1000 K, no unit.</param>
/// <remarks>
/// cp/R = a1 + a2 T + a3 T^2 + a4 T^3 + a5 T^4; h/(R T) = a1 + a2 T/2 + a3 T^2/3 + a4 T^3/4 + a5 T^4/5 + a6/T. Coefficients: GRI-Mech 3.0 (1999; Smith, Golden, Frenklach,
/// Moriarty, Eiteneer, Goldenberg, Bowman, Hanson, Song, Gardiner, Lissianski, Qin), the file of thermodynamic data; molar masses by IUPAC's abridged atomic weights (2021).
/// Fitted from 300 K (some 200 K) to 3500 K at least; down to 200 K they stay smooth.
/// </remarks>
public sealed record Species(string Formula, double MolarMass, IReadOnlyList<double> Low, IReadOnlyList<double> High)
{
    /// <summary>J/(mol K), exact since 2019.</summary>
    public const double GasConstant = 8.31446261815324;

    /// <summary>K, where the two rows of coefficients meet.</summary>
    public const double Middle = 1000;

    /// <summary>K, from which sensible enthalpy is counted.</summary>
    public const double Datum = 298.15;

    /// <summary>J/mol at 298.15 K, from the elements.</summary>
    public double FormationEnthalpy
    {
        get
        {
            const double t = Datum;
            return GasConstant * (Low[5] + t * (Low[0] + t * (Low[1] / 2 + t * (Low[2] / 3 + t * (Low[3] / 4 + t * Low[4] / 5)))));
        }
    }

    public static readonly Species Nitrogen = new("N2", 0.028014,
        [3.298677, 0.0014082404, -3.963222e-6, 5.641515e-9, -2.444854e-12, -1020.8999, 3.950372],
        [2.92664, 0.0014879768, -5.68476e-7, 1.0097038e-10, -6.753351e-15, -922.7977, 5.980528]);

    public static readonly Species Oxygen = new("O2", 0.031998,
        [3.78245636, -0.00299673416, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12, -1063.94356, 3.65767573],
        [3.28253784, 0.00148308754, -7.57966669e-7, 2.09470555e-10, -2.16717794e-14, -1088.45772, 5.45323129]);

    public static readonly Species Argon = new("Ar", 0.03995,
        [2.5, 0, 0, 0, 0, -745.375, 4.366],
        [2.5, 0, 0, 0, 0, -745.375, 4.366]);

    public static readonly Species CarbonDioxide = new("CO2", 0.044009,
        [2.35677352, 0.00898459677, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697, 9.90105222],
        [3.85746029, 0.00441437026, -2.21481404e-6, 5.23490188e-10, -4.72084164e-14, -48759.166, 2.27163806]);

    public static readonly Species WaterVapour = new("H2O", 0.018015,
        [4.19864056, -0.0020364341, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267, -0.849032208],
        [3.03399249, 0.00217691804, -1.64072518e-7, -9.7041987e-11, 1.68200992e-14, -30004.2971, 4.9667701]);

    public static readonly Species CarbonMonoxide = new("CO", 0.02801,
        [3.57953347, -0.00061035368, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13, -14344.086, 3.50840928],
        [2.71518561, 0.00206252743, -9.98825771e-7, 2.30053008e-10, -2.03647716e-14, -14151.8724, 7.81868772]);

    public static readonly Species Hydrogen = new("H2", 0.002016,
        [2.34433112, 0.00798052075, -1.9478151e-5, 2.01572094e-8, -7.37611761e-12, -917.935173, 0.683010238],
        [3.3372792, -4.94024731e-5, 4.99456778e-7, -1.79566394e-10, 2.00255376e-14, -950.158922, -3.20502331]);
}
