using Portwright.Physics.Statistics;

namespace Portwright.Reference.Statistics;

/// <summary>JCGM 100:2008, table G.2, and the tables of F and chi-squared, unrounded (mpmath and SciPy).</summary>
public sealed class StudentAndFisherChecks
{
    [Fact]
    public void Student_factors_agree_with_table_G2()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "t-"))
        {
            var dof = c.In("degrees_of_freedom");
            c.Check("p6827", Student.TwoSidedFactor(0.6827, dof));
            c.Check("p90", Student.TwoSidedFactor(0.90, dof));
            c.Check("p95", Student.TwoSidedFactor(0.95, dof));
            c.Check("p9545", Student.TwoSidedFactor(0.9545, dof));
            c.Check("p99", Student.TwoSidedFactor(0.99, dof));
            c.Check("p9973", Student.TwoSidedFactor(0.9973, dof));
        }
    }

    [Fact]
    public void F_and_chi_squared_points_agree_with_the_tables()
    {
        foreach (var c in PublishedCases.Read("geometry-and-flow", "f-"))
        {
            var (df1, df2) = (c.In("df1"), c.In("df2"));
            c.Check("f_95", Fisher.UpperPoint(0.05, df1, df2));
            c.Check("f_99", Fisher.UpperPoint(0.01, df1, df2));
            c.Check("chi2_95", Fisher.ChiSquaredUpperPoint(0.05, df1));
        }
    }
}
