// Plain loops over plain numbers, as one writes them first.
#include "rows.h"

static inline double slope(double before, double here, double after)
{
    double a = here - before, b = after - here;
    return a * b > 0 ? 2 * a * b / (a + b) : 0;
}

static void predict(const Pipe& m, double dt)
{
    const double kept = 0.05, ahead = -0.5 * dt / m.cellLength, time = 0.5 * dt, k = m.k;
    const double *r = m[Density], *u = m[Velocity], *p = m[Pressure], *y = m[Burnt], *areaSlope = m[AreaSlope], *friction = m[Friction], *heat = m[Heat];
    double *f0 = m[FirstEdge], *f1 = m[FirstEdge + 1], *f2 = m[FirstEdge + 2], *f3 = m[FirstEdge + 3];
    double *l0 = m[LastEdge], *l1 = m[LastEdge + 1], *l2 = m[LastEdge + 2], *l3 = m[LastEdge + 3];
    for (int i = 0; i < m.cells; i++)
    {
        double sr = slope(r[i - 1], r[i], r[i + 1]), su = slope(u[i - 1], u[i], u[i + 1]);
        double sp = slope(p[i - 1], p[i], p[i + 1]), sy = slope(y[i - 1], y[i], y[i + 1]);
        double spread = u[i] * areaSlope[i] + su, speed = std::fabs(u[i]);
        double drag = friction[i] * speed * u[i];
        double warmth = heat[i] * speed * (m.wallHeat * r[i] - k / (k - 1) * p[i]) * (k - 1);
        double dr = ahead * (u[i] * sr + r[i] * spread), du = ahead * (u[i] * su + sp / r[i]) - time * drag;
        double dp = ahead * (u[i] * sp + k * p[i] * spread) + time * warmth, dy = ahead * u[i] * sy;
        f0[i] = std::max(r[i] + dr - 0.5 * sr, kept * r[i]);
        l0[i] = std::max(r[i] + dr + 0.5 * sr, kept * r[i]);
        f1[i] = u[i] + du - 0.5 * su;
        l1[i] = u[i] + du + 0.5 * su;
        f2[i] = std::max(p[i] + dp - 0.5 * sp, kept * p[i]);
        l2[i] = std::max(p[i] + dp + 0.5 * sp, kept * p[i]);
        f3[i] = y[i] + dy - 0.5 * sy;
        l3[i] = y[i] + dy + 0.5 * sy;
    }
}

static void flows(const Pipe& m)
{
    const double* sound = m[Sound];
    const double *l0 = m[LastEdge], *l1 = m[LastEdge + 1], *l2 = m[LastEdge + 2], *l3 = m[LastEdge + 3];
    const double *f0 = m[FirstEdge], *f1 = m[FirstEdge + 1], *f2 = m[FirstEdge + 2], *f3 = m[FirstEdge + 3];
    double *mass = m[Flow], *momentum = m[Flow + 1], *energy = m[Flow + 2], *burnt = m[Flow + 3];
    const double perK = m.k / (m.k - 1);
    for (int i = 1; i < m.cells; i++)
    {
        double rl = l0[i - 1], ul = l1[i - 1], pl = l2[i - 1], cl = sound[i - 1], rr = f0[i], ur = f1[i], pr = f2[i], cr = sound[i];
        double back = std::min(ul - cl, ur - cr), fore = std::max(ul + cl, ur + cr);
        double ml = rl * (back - ul), mr = rr * (fore - ur);
        double contact = (pr - pl + ul * ml - ur * mr) / (ml - mr);
        double s, r, u, p, y;
        if (contact > 0)
        {
            s = std::min(back, 0.0), r = rl, u = ul, p = pl, y = l3[i - 1];
        }
        else
        {
            s = std::max(fore, 0.0), r = rr, u = ur, p = pr, y = f3[i];
        }
        double t = s * (contact - u) / (s - contact);
        mass[i] = r * (u + t);
        momentum[i] = p + r * (u * u + s * t);
        energy[i] = (perK * p + 0.5 * r * u * u) * (u + t) + t * r * (s - u) * contact;
        burnt[i] = y * mass[i];
    }
}

static double update(const Pipe& m, double dt)
{
    const double *o0 = m[m.now], *o1 = m[m.now + 1], *o2 = m[m.now + 2], *o3 = m[m.now + 3];
    double *n0 = m[m.then()], *n1 = m[m.then() + 1], *n2 = m[m.then() + 2], *n3 = m[m.then() + 3];
    const double *f0 = m[FirstEdge], *f1 = m[FirstEdge + 1], *f2 = m[FirstEdge + 2], *l0 = m[LastEdge], *l1 = m[LastEdge + 1], *l2 = m[LastEdge + 2];
    const double *mass = m[Flow], *momentum = m[Flow + 1], *energy = m[Flow + 2], *burnt = m[Flow + 3];
    const double *area = m[FaceArea], *inverse = m[InverseVolume], *friction = m[Friction], *heat = m[Heat];
    double *density = m[Density], *velocity = m[Velocity], *pressure = m[Pressure], *share = m[Burnt], *sound = m[Sound];
    double fastest = 0, least = 1e300, leastPressure = 1e300;
    const double k = m.k;
    for (int i = 0; i < m.cells; i++)
    {
        double a = area[i], b = area[i + 1], scale = dt * inverse[i];
        double rm = 0.5 * (f0[i] + l0[i]), um = 0.5 * (f1[i] + l1[i]), pm = 0.5 * (f2[i] + l2[i]), speed = std::fabs(um);
        double r = o0[i] + scale * (a * mass[i] - b * mass[i + 1]);
        double ru = o1[i] - dt * friction[i] * rm * speed * um + scale * (a * (momentum[i] - pm) - b * (momentum[i + 1] - pm));
        double e = o2[i] + dt * heat[i] * speed * (m.wallHeat * rm - k / (k - 1) * pm) + scale * (a * energy[i] - b * energy[i + 1]);
        double ry = o3[i] + scale * (a * burnt[i] - b * burnt[i + 1]);
        n0[i] = r, n1[i] = ru, n2[i] = e, n3[i] = ry;
        double per = 1 / r, u = ru * per, p = (k - 1) * (e - 0.5 * ru * u), c = std::sqrt(k * p * per);
        density[i] = r, velocity[i] = u, pressure[i] = p, share[i] = ry * per, sound[i] = c;
        fastest = std::max(fastest, std::fabs(u) + c);
        least = std::min(least, r);
        leastPressure = std::min(leastPressure, p);
    }
    return least > 0 && leastPressure > 0 ? fastest : NAN;
}

extern "C" double plain(double* first, long stride, int cells, double k, double cellLength, double wallHeat, double courant, double fastest, int steps)
{
    Pipe m{first, stride, cells, k, cellLength, wallHeat};
    for (int n = 0; n < steps; n++)
    {
        double dt = courant * cellLength / fastest;
        mirror(m);
        predict(m, dt);
        flows(m);
        walls(m);
        fastest = update(m, dt);
        m.now = m.then();
    }
    return fastest;
}
