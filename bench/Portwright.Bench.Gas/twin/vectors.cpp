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
    const double *density = m[Density], *velocity = m[Velocity], *pressure = m[Pressure], *burnt = m[Burnt], *areaSlope = m[AreaSlope], *friction = m[Friction], *heat = m[Heat];
    double *f0 = m[FirstEdge], *f1 = m[FirstEdge + 1], *f2 = m[FirstEdge + 2], *f3 = m[FirstEdge + 3];
    double *l0 = m[LastEdge], *l1 = m[LastEdge + 1], *l2 = m[LastEdge + 2], *l3 = m[LastEdge + 3];
    T half = T::all(0.5), kept = T::all(0.05), k = T::all(m.k), ahead = T::all(-dt / m.cellLength), time = T::all(0.5 * dt);
    T timeHeat = T::all(0.5 * dt * (m.k - 1)), perK = T::all(m.k / (m.k - 1)), wallHeat = T::all(m.wallHeat);
    for (int i = 0; i < m.cells; i += T::count)
    {
        T r = T::load(density + i), u = T::load(velocity + i), p = T::load(pressure + i), y = T::load(burnt + i);
        T sr = halfSlope(T::load(density + i - 1), r, T::load(density + i + 1)), su = halfSlope(T::load(velocity + i - 1), u, T::load(velocity + i + 1));
        T sp = halfSlope(T::load(pressure + i - 1), p, T::load(pressure + i + 1)), sy = halfSlope(T::load(burnt + i - 1), y, T::load(burnt + i + 1));
        T spread = T::fma(half * u, T::load(areaSlope + i), su), speed = T::abs(u);
        T drag = T::load(friction + i) * speed * u, warmth = T::load(heat + i) * speed * T::less(perK, p, wallHeat * r);
        T r1 = T::fma(ahead, T::fma(u, sr, r * spread), r), u1 = T::fma(ahead, T::fma(u, su, sp / r), T::less(time, drag, u));
        T p1 = T::fma(ahead, T::fma(u, sp, k * p * spread), T::fma(timeHeat, warmth, p)), y1 = T::fma(ahead, u * sy, y);
        T floor = kept * r;
        T::max(r1 - sr, floor).store(f0 + i);
        T::max(r1 + sr, floor).store(l0 + i);
        (u1 - su).store(f1 + i);
        (u1 + su).store(l1 + i);
        floor = kept * p;
        T::max(p1 - sp, floor).store(f2 + i);
        T::max(p1 + sp, floor).store(l2 + i);
        (y1 - sy).store(f3 + i);
        (y1 + sy).store(l3 + i);
    }
}

template <class T> __attribute__((noinline)) static void flows(const Pipe& m)
{
    const double* sound = m[Sound];
    const double *l0 = m[LastEdge], *l1 = m[LastEdge + 1], *l2 = m[LastEdge + 2], *l3 = m[LastEdge + 3];
    const double *f0 = m[FirstEdge], *f1 = m[FirstEdge + 1], *f2 = m[FirstEdge + 2], *f3 = m[FirstEdge + 3];
    double *mass = m[Flow], *momentum = m[Flow + 1], *energy = m[Flow + 2], *burnt = m[Flow + 3];
    T zero = T::all(0), half = T::all(0.5), perK = T::all(m.k / (m.k - 1));
    for (int i = 0; i < m.cells; i += T::count)
    {
        T rl = T::load(l0 + i - 1), ul = T::load(l1 + i - 1), pl = T::load(l2 + i - 1), yl = T::load(l3 + i - 1), cl = T::load(sound + i - 1);
        T rr = T::load(f0 + i), ur = T::load(f1 + i), pr = T::load(f2 + i), yr = T::load(f3 + i), cr = T::load(sound + i);
        T back = T::min(ul - cl, ur - cr), fore = T::max(ul + cl, ur + cr), ml = rl * (back - ul), mr = rr * (fore - ur);
        T contact = (pr - pl + T::less(ur, mr, ul * ml)) / (ml - mr);
        T s = T::choose(contact, T::min(back, zero), T::max(fore, zero));
        T r = T::choose(contact, rl, rr), u = T::choose(contact, ul, ur), p = T::choose(contact, pl, pr), y = T::choose(contact, yl, yr);
        T t = s * (contact - u) / (s - contact), through = u + t, flow = r * through;
        flow.store(mass + i);
        T::fma(r, T::fma(u, u, s * t), p).store(momentum + i);
        T::fma(T::fma(half * r * u, u, perK * p), through, t * r * (s - u) * contact).store(energy + i);
        (y * flow).store(burnt + i);
    }
}

template <class T> __attribute__((noinline)) static double update(const Pipe& m, double step)
{
    const double *o0 = m[m.now], *o1 = m[m.now + 1], *o2 = m[m.now + 2], *o3 = m[m.now + 3];
    double *n0 = m[m.then()], *n1 = m[m.then() + 1], *n2 = m[m.then() + 2], *n3 = m[m.then() + 3];
    const double *f0 = m[FirstEdge], *f1 = m[FirstEdge + 1], *f2 = m[FirstEdge + 2], *l0 = m[LastEdge], *l1 = m[LastEdge + 1], *l2 = m[LastEdge + 2];
    const double *mass = m[Flow], *momentum = m[Flow + 1], *energy = m[Flow + 2], *burntFlow = m[Flow + 3];
    const double *area = m[FaceArea], *inverseVolume = m[InverseVolume], *friction = m[Friction], *heat = m[Heat];
    double *density = m[Density], *velocity = m[Velocity], *pressure = m[Pressure], *burnt = m[Burnt], *sound = m[Sound];
    T dt = T::all(step), half = T::all(0.5), zero = T::all(0), one = T::all(1), k = T::all(m.k), kLess = T::all(m.k - 1), perK = T::all(m.k / (m.k - 1)), wallHeat = T::all(m.wallHeat);
    T fastest = zero, leastDensity = T::all(1e300), leastPressure = leastDensity;
    for (int i = 0; i < m.cells; i += T::count)
    {
        T scale = dt * T::load(inverseVolume + i), a = scale * T::load(area + i), b = scale * T::load(area + i + 1);
        T rm = half * (T::load(f0 + i) + T::load(l0 + i)), um = half * (T::load(f1 + i) + T::load(l1 + i)), pm = half * (T::load(f2 + i) + T::load(l2 + i));
        T travel = dt * T::abs(um), drag = T::load(friction + i) * travel * rm, warmth = T::load(heat + i) * travel;
        T r = T::less(b, T::load(mass + i + 1), T::fma(a, T::load(mass + i), T::load(o0 + i)));
        T ru = T::less(b, T::load(momentum + i + 1) - pm, T::fma(a, T::load(momentum + i) - pm, T::less(drag, um, T::load(o1 + i))));
        T e = T::fma(warmth, T::less(perK, pm, wallHeat * rm), T::load(o2 + i));
        e = T::less(b, T::load(energy + i + 1), T::fma(a, T::load(energy + i), e));
        T ry = T::less(b, T::load(burntFlow + i + 1), T::fma(a, T::load(burntFlow + i), T::load(o3 + i)));
        r.store(n0 + i);
        ru.store(n1 + i);
        e.store(n2 + i);
        ry.store(n3 + i);
        T inverse = one / r, u = ru * inverse, p = kLess * T::less(half * ru, u, e), c = T::sqrt(k * p * inverse);
        r.store(density + i);
        u.store(velocity + i);
        p.store(pressure + i);
        (ry * inverse).store(burnt + i);
        c.store(sound + i);
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
