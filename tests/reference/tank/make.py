"""Values for the tests of the tank, by methods that share nothing with the engine. Writes values.json beside this file.

Run:  python3 make.py    (about two minutes; the tests do not need it, they read values.json)
Made with Python 3.11, numpy 2.4, scipy 1.17, mpmath 1.3. All in SI units, mu0 = 1.25663706212e-6, eps0 = 8.8541878128e-12.

elliptic   K, E and (1 - m/2) K - E by mpmath, 60 digits.
mutual     coaxial circular filaments, Maxwell's formula in mpmath with 60 digits, near and far.
field      flux density of a ring at its own radius, by numerical Biot-Savart (mpmath quad).
filaments  parallel straight filaments, Neumann's double integral by mpmath quad.
crowded    rings of round wire in series, no flux in the metal, current free to choose its place in the surface: integral equation for the
           flux through circles on the surface, 48 points a section, logarithm taken care of by the distance a / points of the
           trigonometric rule. 24 points agree to 1e-5.
helix      Neumann's double integral over a thin helix as a polygon of 480 sides a turn, leads straight out along the radius; sides
           within half a turn of each other at the geometric mean distance a, others at their true distance. `winding` without, `leads` what
           they add.
parts      the same with a part turn closed by the straight chord: `closed`.
charges    a thin charged helix, voltage rising evenly along the wire from 0 to 1, by collocation: C = sum q v (24 segments a turn).
across     wire across a changing field: real part of -J2(ka) / J0(ka) by mpmath, ka = (1 - j) a / delta.
"""
import json
import os

import mpmath as mp
import numpy as np
from scipy.special import ellipe, ellipkm1

mp.mp.dps = 60
MU0 = 1.25663706212e-6
EPS0 = 8.8541878128e-12


def elliptic():
    out = []
    for m in ['1e-12', '1e-6', '0.001', '0.1', '0.5', '0.9', '0.999', '0.999999']:
        x = mp.mpf(m)
        k, e = mp.ellipk(x), mp.ellipe(x)
        out.append({'m': float(x), 'complement': float(1 - x), 'k': float(k), 'e': float(e), 'half': float((1 - x / 2) * k - e)})
    return out


def mutual():
    out = []
    for r1, r2, z in [('0.25', '0.25', '1e-7'), ('0.25', '0.25', '1e-3'), ('0.005', '0.005', '0.0011'), ('0.05', '0.005', '0'), ('0.01', '0.01', '1'),
                      ('0.01', '0.01', '100'), ('0.1', '0.0999999', '0'), ('0.001', '0.3', '0.2'), ('0.006', '0.004', '0.003')]:
        a, b, h = mp.mpf(r1), mp.mpf(r2), mp.mpf(z)
        m = 4 * a * b / ((a + b) ** 2 + h * h)
        k = mp.sqrt(m)
        value = mp.mpf(MU0) * mp.sqrt(a * b) * ((2 / k - k) * mp.ellipk(m) - 2 / k * mp.ellipe(m))
        out.append({'r1': float(a), 'r2': float(b), 'z': float(h), 'value': float(value)})
    return out


def field():
    mp.mp.dps = 20
    out = []
    for r, z in [(0.005, 0.001), (0.005, 0.003), (0.01, 0.03), (0.05, -0.004)]:
        # point at (r, 0, z); element at (r cos t, r sin t, 0)
        def radial(t):
            d = mp.sqrt(2 * r * r * (1 - mp.cos(t)) + z * z)
            return r * z * mp.cos(t) / d**3

        def axial(t):
            d = mp.sqrt(2 * r * r * (1 - mp.cos(t)) + z * z)
            return r * (r - r * mp.cos(t)) / d**3

        cut = [0, 0.05, 0.2, 0.6, mp.pi]
        scale = 2 * MU0 / (4 * mp.pi)
        out.append({'r': r, 'z': z, 'radial': float(scale * mp.quad(radial, cut)), 'axial': float(scale * mp.quad(axial, cut))})
    return out


def filaments():
    mp.mp.dps = 20
    out = []
    for l1, l2, gap, s in [(0.02, 0.02, -0.02, 0.008), (0.02, 0.01, 0.0, 0.005), (0.03, 0.01, 0.02, 0.002), (0.05, 0.05, -0.05, 0.0005)]:
        inner = lambda x: mp.asinh((l1 + gap + l2 - x) / s) - mp.asinh((l1 + gap - x) / s)
        value = MU0 / (4 * mp.pi) * mp.quad(inner, mp.linspace(0, l1, 9))
        out.append({'l1': l1, 'l2': l2, 'gap': gap, 'spacing': s, 'value': float(value)})
    return out


def ring_mutual(r1, r2, z):
    far = (r1 + r2) ** 2 + z * z
    near = ((r1 - r2) ** 2 + z * z) / far
    k = np.sqrt(4 * r1 * r2 / far)
    return MU0 * np.sqrt(r1 * r2) * ((2 / k - k) * ellipkm1(near) - 2 / k * ellipe(k * k))


def crowded_rings(turns, radius, wire, pitch, points=48):
    t = 2 * np.pi * (np.arange(points) + 0.5) / points
    r = np.concatenate([radius + wire * np.cos(t)] * turns)
    z = np.concatenate([i * pitch + wire * np.sin(t) for i in range(turns)])
    n = turns * points
    with np.errstate(all='ignore'):
        a = ring_mutual(r[:, None], r[None, :], z[:, None] - z[None, :]) / (MU0 * radius)
    a[np.arange(n), np.arange(n)] = r / radius * (np.log(8 * r / (wire / points)) - 2)
    system = np.zeros((n + turns, n + turns))
    right = np.zeros(n + turns)
    system[:n, :n] = a
    for i in range(turns):
        own = slice(i * points, (i + 1) * points)
        system[own, n + i] = -1
        system[n + i, own] = 1
        right[n + i] = 1
    return np.linalg.solve(system, right)[n:].sum() * MU0 * radius


COILS = [(1, 8, 1, 2), (1, 100, 6, 12), (2, 12, 1, 2), (3, 6, 0.8, 1.5), (3, 12, 1, 4), (4, 8, 1, 2), (5, 8, 1, 1.5), (5, 10, 0.5, 1), (5, 11, 1, 1.15), (5, 11, 1, 2),
         (6, 16, 1, 2.2), (8, 10, 0.8, 1.2), (10, 6, 0.5, 0.6), (10, 20, 1, 2), (12, 10, 1, 1.5), (20, 12, 0.8, 1), (4, 6, 2, 3)]


def crowded():
    return [{'turns': n, 'diameter': D / 1e3, 'wire': d / 1e3, 'pitch': p / 1e3, 'value': crowded_rings(n, D / 2e3, d / 2e3, p / 1e3)} for n, D, d, p in COILS]


def polygon(turns, radius, pitch, sides=480, lead=0.0, chord=False):
    n = int(round(turns * sides))
    t = np.linspace(0, 2 * np.pi * turns, n + 1)
    p = np.c_[radius * np.cos(t), radius * np.sin(t), pitch * t / 2 / np.pi]
    if lead:
        steps = max(20, int(lead / (2 * np.pi * radius / sides)))
        out = np.linspace(0, lead, steps + 1)[1:, None]
        start = p[0] + out[::-1] * np.array([1, 0, 0])
        stop = p[-1] + out * np.array([np.cos(t[-1]), np.sin(t[-1]), 0])
        p = np.vstack([start, p, stop])
    if chord:
        length = 2 * radius * abs(np.sin(np.pi * turns))
        steps = max(8, int(length / (2 * np.pi * radius / sides)))
        u = np.linspace(0, 1, steps + 1)[1:, None]
        p = np.vstack([p, p[-1] * (1 - u) + np.array([radius, 0, p[-1, 2]]) * u])
    return p


def neumann(p, wire, sides=480):
    d = np.diff(p, axis=0)
    c = (p[1:] + p[:-1]) / 2
    length = np.linalg.norm(d, axis=1)
    n = len(d)
    total = 0.0
    index = np.arange(n)
    for b in range(0, n, 400):
        i = index[b:b + 400]
        near = np.abs(i[:, None] - index[None]) < sides // 2
        inverse = 1 / np.sqrt(((c[i, None] - c[None]) ** 2).sum(-1) + np.where(near, wire * wire, 0))
        inverse[i - b, i] = 2 * (length[i] * np.arcsinh(length[i] / wire) - np.hypot(length[i], wire) + wire) / length[i] ** 2
        total += ((d[i] @ d.T) * inverse).sum()
    return MU0 / (4 * np.pi) * total


def helix():
    out = []
    for n, D, d, p in [(1, 100, 2, 4), (3, 6, 0.8, 1.5), (3, 12, 1, 4), (5, 8, 1, 1.5), (5, 11, 1, 2), (8, 10, 0.8, 1.2), (10, 20, 1, 2)]:
        R, a, P, lead = D / 2e3, d / 2e3, p / 1e3, 0.01
        bare = neumann(polygon(n, R, P), a)
        out.append({'turns': n, 'diameter': D / 1e3, 'wire': d / 1e3, 'pitch': P, 'lead': lead, 'winding': bare, 'leads': neumann(polygon(n, R, P, lead=lead), a) - bare})
    return out


def parts():
    out = []
    for n in [1.5, 2.5, 3.25, 3.5, 4.5, 4.75, 5.25, 5.5, 5.75]:
        for D, d, p in [(8, 1, 1.5), (11, 1, 2)]:
            out.append({'turns': n, 'diameter': D / 1e3, 'wire': d / 1e3, 'pitch': p / 1e3, 'closed': neumann(polygon(n, D / 2e3, p / 1e3, chord=True), d / 2e3)})
    return out


def charges():
    out = []
    for n, D, d, p in [(1, 100, 2, 3), (1, 31.83, 1.3476, 2), (2, 100, 2, 5), (3, 100, 2, 10), (3, 12, 1, 4), (5, 8, 1, 1.5), (5, 11, 1, 2), (10, 20, 1, 2), (20, 20, 0.5, 1)]:
        R, a, P, seg, fine = D / 2e3, d / 2e3, p / 1e3, 24, 8
        count = n * seg
        step = 2 * np.pi * n / count
        s = (np.arange(count) + 0.5) * step
        h = P / 2 / np.pi
        at = lambda x: np.c_[R * np.cos(x), R * np.sin(x), h * x]
        length = step * np.hypot(R, h)
        A = np.zeros((count, count))
        i = np.arange(count)
        near = np.abs(i[:, None] - i[None]) < seg // 2
        for k in range(fine):
            q = at(s + (k + 0.5) / fine * step - step / 2)
            A += 1 / np.sqrt(((at(s)[:, None] - q[None]) ** 2).sum(-1) + np.where(near, a * a, 0)) / fine
        A[i, i] = 2 * np.arcsinh(length / 2 / a) / length
        v = s / (2 * np.pi * n)
        out.append({'turns': n, 'diameter': D / 1e3, 'wire': d / 1e3, 'pitch': P, 'value': float(np.linalg.solve(A / (4 * np.pi * EPS0), v) @ v)})
    return out


def across():
    out = []
    for x in [0.1, 0.5, 1, 2, 4, 10, 75]:
        ka = mp.mpc(x, -x)
        out.append({'x': x, 'share': float(-mp.re(mp.besselj(2, ka) / mp.besselj(0, ka)))})
    return out


if __name__ == '__main__':
    values = {f.__name__: f() for f in [elliptic, mutual, field, filaments, crowded, helix, parts, charges, across]}
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), 'values.json'), 'w') as file:
        json.dump(values, file, indent=1)
        file.write('\n')
