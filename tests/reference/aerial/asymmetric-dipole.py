"""Input impedance and horizon effective length of a straight wire fed off its middle, by an independent moment method.

Piecewise-sinusoidal Galerkin on one straight wire in free space, radius kept in the kernel, gap feed at a node, perfect conductor;
equations as in reference/antennas.md section 5. numpy only. Segments about lambda/40, so the delta gap has not crept far.
Check on the method: half wave, a = 0.001 lambda, 8 segments -> 83.5 + j42.6 (reference/antennas.md section 5).
Output: asymmetric-dipole.json; lengths in wavelengths, impedance in ohm, h = integral of I dz / I(feed) in wavelengths.
"""
import json
import numpy as np

ETA, K = 376.730313668, 2 * np.pi


def panels(d, a):
    """Gauss points on (0, d) graded towards both ends."""
    x, w = np.polynomial.legendre.leggauss(8)
    edges = [0.0]
    step = a / 2
    while edges[-1] + step < d / 2:
        edges.append(edges[-1] + step)
        step *= 2
    left = np.array(edges + [d / 2])
    edges = np.concatenate([left, d - left[-2::-1]])
    t = np.concatenate([(e0 + e1) / 2 + (e1 - e0) / 2 * x for e0, e1 in zip(edges[:-1], edges[1:])])
    ww = np.concatenate([(e1 - e0) / 2 * w for e0, e1 in zip(edges[:-1], edges[1:])])
    return t, ww


def ez(z, z1, z2, i1, i2, a):
    d = z2 - z1
    r1, r2 = np.sqrt(a * a + (z - z1) ** 2), np.sqrt(a * a + (z - z2) ** 2)
    e1, e2 = np.exp(-1j * K * r1) / r1, np.exp(-1j * K * r2) / r2
    return ETA / (4 * np.pi * 1j * np.sin(K * d)) * ((i1 - i2 * np.cos(K * d)) * e2 + (i2 - i1 * np.cos(K * d)) * e1)


def solve(up, down, a, n_up, n_down):
    nodes = np.concatenate([-down + down / n_down * np.arange(n_down), up / n_up * np.arange(n_up + 1)])
    n = len(nodes) - 2
    z = np.zeros((n, n), complex)
    for m in range(n):
        for lo, hi, rising in ((m, m + 1, True), (m + 1, m + 2, False)):
            d = nodes[hi] - nodes[lo]
            t, w = panels(d, a)
            f = np.sin(K * (t if rising else d - t)) / np.sin(K * d)
            zz = nodes[lo] + t
            for q in range(n):
                e = ez(zz, nodes[q], nodes[q + 1], 0, 1, a) + ez(zz, nodes[q + 1], nodes[q + 2], 1, 0, a)
                z[m, q] -= np.sum(w * f * e)
    feed = n_down - 1
    v = np.zeros(n, complex)
    v[feed] = 1
    i = np.linalg.solve(z, v)
    lengths = np.array([sum(np.tan(K * (nodes[m + s + 1] - nodes[m + s]) / 2) / K for s in (0, 1)) for m in range(n)])
    h = np.sum(i * lengths) / i[feed]
    zin = 1 / i[feed]
    return zin, h


z, h = solve(0.25, 0.25, 0.001, 4, 4)
print('half wave, 8 segments:', z, h)
rows = []
for up, down, a in (
    (0.3, 0.3, 0.001), (0.2, 0.2, 0.001), (0.25, 0.25, 0.001), (0.25, 0.1, 0.001), (0.25, 0.15, 0.001), (0.2, 0.3, 0.001), (0.1, 0.05, 0.001), (0.15, 0.02, 0.001),
    (0.3, 0.2, 0.0005), (0.333, 0.05, 0.001), (0.333, 0.333, 0.001), (0.25, 0.05, 0.0003), (0.25, 0.05, 0.003), (0.333, 0.05, 0.006)):
    nu, nd = max(2, round(up * 40)), max(2, round(down * 40))
    z, h = solve(up, down, a, nu, nd)
    gain = np.pi * ETA * abs(h) ** 2 / z.real
    rows.append({'up': up, 'down': down, 'radius': a, 'R': z.real, 'X': z.imag, 'h': abs(h), 'gain': gain})
    print(rows[-1])
json.dump(rows, open('asymmetric-dipole.json', 'w'), indent=1)
