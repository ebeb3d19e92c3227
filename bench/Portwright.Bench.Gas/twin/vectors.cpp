// The same written with vectors by hand: intrinsics of 256 and of 512 bits under one template.
#include "rows.h"
#include <immintrin.h>

struct V4
{
    static constexpr int count = 4;
    __m256d v;
    static V4 all(double x) { return {_mm256_set1_pd(x)}; }
    static V4 load(const double* p) { return {_mm256_loadu_pd(p)}; }
    void store(double* p) const { _mm256_storeu_pd(p, v); }
    friend V4 operator+(V4 a, V4 b) { return {_mm256_add_pd(a.v, b.v)}; }
    friend V4 operator-(V4 a, V4 b) { return {_mm256_sub_pd(a.v, b.v)}; }
    friend V4 operator*(V4 a, V4 b) { return {_mm256_mul_pd(a.v, b.v)}; }
    friend V4 operator/(V4 a, V4 b) { return {_mm256_div_pd(a.v, b.v)}; }
    static V4 fma(V4 a, V4 b, V4 c) { return {_mm256_fmadd_pd(a.v, b.v, c.v)}; }
    static V4 less(V4 a, V4 b, V4 c) { return {_mm256_fnmadd_pd(a.v, b.v, c.v)}; }
    static V4 min(V4 a, V4 b) { return {_mm256_min_pd(a.v, b.v)}; }
    static V4 max(V4 a, V4 b) { return {_mm256_max_pd(a.v, b.v)}; }
    static V4 abs(V4 a) { return {_mm256_andnot_pd(_mm256_set1_pd(-0.0), a.v)}; }
    static V4 sqrt(V4 a) { return {_mm256_sqrt_pd(a.v)}; }
    static V4 choose(V4 t, V4 a, V4 b) { return {_mm256_blendv_pd(b.v, a.v, _mm256_cmp_pd(t.v, _mm256_setzero_pd(), _CMP_GT_OQ))}; }
};

#ifdef __AVX512F__
struct V8
{
    static constexpr int count = 8;
    __m512d v;
    static V8 all(double x) { return {_mm512_set1_pd(x)}; }
    static V8 load(const double* p) { return {_mm512_loadu_pd(p)}; }
    void store(double* p) const { _mm512_storeu_pd(p, v); }
    friend V8 operator+(V8 a, V8 b) { return {_mm512_add_pd(a.v, b.v)}; }
    friend V8 operator-(V8 a, V8 b) { return {_mm512_sub_pd(a.v, b.v)}; }
    friend V8 operator*(V8 a, V8 b) { return {_mm512_mul_pd(a.v, b.v)}; }
    friend V8 operator/(V8 a, V8 b) { return {_mm512_div_pd(a.v, b.v)}; }
    static V8 fma(V8 a, V8 b, V8 c) { return {_mm512_fmadd_pd(a.v, b.v, c.v)}; }
    static V8 less(V8 a, V8 b, V8 c) { return {_mm512_fnmadd_pd(a.v, b.v, c.v)}; }
    static V8 min(V8 a, V8 b) { return {_mm512_min_pd(a.v, b.v)}; }
    static V8 max(V8 a, V8 b) { return {_mm512_max_pd(a.v, b.v)}; }
    static V8 abs(V8 a) { return {_mm512_abs_pd(a.v)}; }
    static V8 sqrt(V8 a) { return {_mm512_sqrt_pd(a.v)}; }
    static V8 choose(V8 t, V8 a, V8 b) { return {_mm512_mask_blend_pd(_mm512_cmp_pd_mask(t.v, _mm512_setzero_pd(), _CMP_GT_OQ), b.v, a.v)}; }
};
#endif

template <class T> static double greatest(T x)
{
    double lane[T::count];
    x.store(lane);
    return *std::max_element(lane, lane + T::count);
}

template <class T> static double least(T x)
{
    double lane[T::count];
    x.store(lane);
    return *std::min_element(lane, lane + T::count);
}

template <class T> static inline T halfSlope(T before, T here, T after)
{
    T a = here - before, b = after - here;
    return T::max(a * b, T::all(0)) / (a + b + T::all(1e-300));
}

template <class T> __attribute__((noinline)) static void predict(const Pipe& m, double dt)
{
    const double *gas = m[Density], *shape = m[AreaSlope];
    double *first = m[FirstEdge], *last = m[LastEdge];
    const long row = m.stride, row2 = 2 * row, row3 = 3 * row;
    T half = T::all(0.5), kept = T::all(0.05), k = T::all(m.k), ahead = T::all(-dt / m.cellLength), time = T::all(0.5 * dt);
    T timeHeat = T::all(0.5 * dt * (m.k - 1)), perK = T::all(m.k / (m.k - 1)), wallHeat = T::all(m.wallHeat);
    for (int left = m.cells; left > 0; left -= T::count, gas += T::count, shape += T::count, first += T::count, last += T::count)
    {
        T r = T::load(gas), u = T::load(gas + row), p = T::load(gas + row2), y = T::load(gas + row3);
        T sr = halfSlope(T::load(gas - 1), r, T::load(gas + 1)), su = halfSlope(T::load(gas + row - 1), u, T::load(gas + row + 1));
        T sp = halfSlope(T::load(gas + row2 - 1), p, T::load(gas + row2 + 1)), sy = halfSlope(T::load(gas + row3 - 1), y, T::load(gas + row3 + 1));
        T spread = T::fma(half * u, T::load(shape), su), speed = T::abs(u);
        T drag = T::load(shape + row) * speed * u, warmth = T::load(shape + row2) * speed * T::less(perK, p, wallHeat * r);
        T r1 = T::fma(ahead, T::fma(u, sr, r * spread), r), u1 = T::fma(ahead, T::fma(u, su, sp / r), T::less(time, drag, u));
        T p1 = T::fma(ahead, T::fma(u, sp, k * p * spread), T::fma(timeHeat, warmth, p)), y1 = T::fma(ahead, u * sy, y);
        T floor = kept * r;
        T::max(r1 - sr, floor).store(first);
        T::max(r1 + sr, floor).store(last);
        (u1 - su).store(first + row);
        (u1 + su).store(last + row);
        floor = kept * p;
        T::max(p1 - sp, floor).store(first + row2);
        T::max(p1 + sp, floor).store(last + row2);
        (y1 - sy).store(first + row3);
        (y1 + sy).store(last + row3);
    }
}

template <class T> __attribute__((noinline)) static void flows(const Pipe& m)
{
    const double *sound = m[Sound], *before = m[LastEdge] - 1, *after = m[FirstEdge];
    double* out = m[Flow];
    const long row = m.stride, row2 = 2 * row, row3 = 3 * row;
    T zero = T::all(0), half = T::all(0.5), perK = T::all(m.k / (m.k - 1));
    for (int left = m.cells; left > 0; left -= T::count, sound += T::count, before += T::count, after += T::count, out += T::count)
    {
        T rl = T::load(before), ul = T::load(before + row), pl = T::load(before + row2), yl = T::load(before + row3), cl = T::load(sound - 1);
        T rr = T::load(after), ur = T::load(after + row), pr = T::load(after + row2), yr = T::load(after + row3), cr = T::load(sound);
        T back = T::min(ul - cl, ur - cr), fore = T::max(ul + cl, ur + cr), ml = rl * (back - ul), mr = rr * (fore - ur);
        T contact = (pr - pl + T::less(ur, mr, ul * ml)) / (ml - mr);
        T s = T::choose(contact, T::min(back, zero), T::max(fore, zero));
        T r = T::choose(contact, rl, rr), u = T::choose(contact, ul, ur), p = T::choose(contact, pl, pr), y = T::choose(contact, yl, yr);
        T t = s * (contact - u) / (s - contact), through = u + t, flow = r * through;
        flow.store(out);
        T::fma(r, T::fma(u, u, s * t), p).store(out + row);
        T::fma(T::fma(half * r * u, u, perK * p), through, t * r * (s - u) * contact).store(out + row2);
        (y * flow).store(out + row3);
    }
}

template <class T> __attribute__((noinline)) static double update(const Pipe& m, double step)
{
    const double *old = m[m.now], *first = m[FirstEdge], *last = m[LastEdge], *flow = m[Flow], *shape = m[AreaSlope];
    double *next = m[m.then()], *gas = m[Velocity];
    const long row = m.stride, row2 = 2 * row, row3 = 3 * row;
    T dt = T::all(step), half = T::all(0.5), zero = T::all(0), one = T::all(1), k = T::all(m.k), kLess = T::all(m.k - 1), perK = T::all(m.k / (m.k - 1)), wallHeat = T::all(m.wallHeat);
    T fastest = zero, leastDensity = T::all(1e300), leastPressure = leastDensity;
    for (int left = m.cells; left > 0; left -= T::count, old += T::count, next += T::count, first += T::count, last += T::count, flow += T::count, shape += T::count, gas += T::count)
    {
        T scale = dt * T::load(shape - row), a = scale * T::load(shape - row2), b = scale * T::load(shape - row2 + 1);
        T rm = half * (T::load(first) + T::load(last)), um = half * (T::load(first + row) + T::load(last + row)), pm = half * (T::load(first + row2) + T::load(last + row2));
        T travel = dt * T::abs(um), drag = T::load(shape + row) * travel * rm, warmth = T::load(shape + row2) * travel;
        T r = T::less(b, T::load(flow + 1), T::fma(a, T::load(flow), T::load(old)));
        T ru = T::less(b, T::load(flow + row + 1) - pm, T::fma(a, T::load(flow + row) - pm, T::less(drag, um, T::load(old + row))));
        T e = T::fma(warmth, T::less(perK, pm, wallHeat * rm), T::load(old + row2));
        e = T::less(b, T::load(flow + row2 + 1), T::fma(a, T::load(flow + row2), e));
        T ry = T::less(b, T::load(flow + row3 + 1), T::fma(a, T::load(flow + row3), T::load(old + row3)));
        r.store(next);
        ru.store(next + row);
        e.store(next + row2);
        ry.store(next + row3);
        T inverse = one / r, u = ru * inverse, p = kLess * T::less(half * ru, u, e), c = T::sqrt(k * p * inverse);
        r.store(gas - row);
        u.store(gas);
        p.store(gas + row);
        (ry * inverse).store(gas + row2);
        c.store(gas + row3);
        fastest = T::max(fastest, T::abs(u) + c);
        leastDensity = T::min(leastDensity, r);
        leastPressure = T::min(leastPressure, p);
    }
    return least(leastDensity) > 0 && least(leastPressure) > 0 ? greatest(fastest) : NAN;
}

template <class T> static double run(Pipe m, double courant, double fastest, int steps)
{
    for (int n = 0; n < steps; n++)
    {
        double dt = courant * m.cellLength / fastest;
        mirror(m);
        predict<T>(m, dt);
        flows<T>(m);
        walls(m);
        fastest = update<T>(m, dt);
        m.now = m.then();
    }
    return fastest;
}

extern "C" double vectors4(double* first, long stride, int cells, double k, double cellLength, double wallHeat, double courant, double fastest, int steps)
{
    return run<V4>({first, stride, cells, k, cellLength, wallHeat}, courant, fastest, steps);
}

#ifdef __AVX512F__
extern "C" double vectors8(double* first, long stride, int cells, double k, double cellLength, double wallHeat, double courant, double fastest, int steps)
{
    return run<V8>({first, stride, cells, k, cellLength, wallHeat}, courant, fastest, steps);
}
#endif
