// The rows of one pipe, as PipeMemory lays them out; the same scheme as PipeKernel, written again for comparison only.
#pragma once
#include <algorithm>
#include <cmath>

enum { Density, Velocity, Pressure, Burnt, Sound, Conserved, Next = 9, FirstEdge = 13, LastEdge = 17, Flow = 21, FaceArea = 25, InverseVolume, AreaSlope, Friction, Heat };

struct Pipe
{
    double* first;
    long stride;
    int cells;
    double k, cellLength, wallHeat;
    int now = Conserved;

    double* operator[](int row) const { return first + row * stride; }
    int then() const { return now == Conserved ? Next : Conserved; }
};

// A wall beyond either end: the mirror image for the slopes, the exact pressure for the flow.
inline void mirror(const Pipe& m)
{
    for (int row = 0; row < 4; row++)
    {
        double sign = row == Velocity ? -1 : 1;
        m[row][-1] = sign * m[row][0];
        m[row][m.cells] = sign * m[row][m.cells - 1];
    }
}

inline double wall(double r, double u, double p, double k)
{
    if (u > 0)
    {
        double half = (k + 1) / 4 * r * u * u;
        return p + half + std::sqrt(half * half + k * p * r * u * u);
    }
    double left = 1 + (k - 1) / 2 * u / std::sqrt(k * p / r);
    return left > 0 ? p * std::pow(left, 2 * k / (k - 1)) : 0;
}

inline void walls(const Pipe& m)
{
    int n = m.cells;
    for (int row = 0; row < 4; row++) m[Flow + row][0] = m[Flow + row][n] = 0;
    m[Flow + 1][0] = wall(m[FirstEdge][0], -m[FirstEdge + 1][0], m[FirstEdge + 2][0], m.k);
    m[Flow + 1][n] = wall(m[LastEdge][n - 1], m[LastEdge + 1][n - 1], m[LastEdge + 2][n - 1], m.k);
}
