"""Loss of coaxial turns of round wire by two methods that share nothing with the multipole solution of the engine. Writes values.json beside this file.

Run:  python3 make.py    (under a minute; the tests do not need it, they read values.json)
Made with Python 3.11, numpy 2.4, scipy 1.17, mpmath 1.3.

ratios    J_n(z) / J_(n-1)(z) by mpmath, 40 digits.
surface   Perfect skin effect. The current in the surface of each torus is found from an integral equation: the flux through every circle on the
          surface of one turn is the same (no field enters the metal). Unknowns are values at equally spaced points of each section; the
          logarithm of the kernel is integrated in Fourier form (Nystroem's method), so that convergence is exponential: 48 and 64 points
          agree in all digits kept. Kernel: Maxwell's mutual inductance of coaxial rings. Loss is the mean square of surface current.
filaments Any skin depth. Each section is cut into rings and sectors, each carrying even current as a ring filament with its own resistance; the
          filaments of a turn are in parallel, the turns in series with the same current. Mutual inductances as above; self-inductances by the
          geometric mean distance of a rectangle, 0.2235 (b + c) (Grover 1946 ch. 3). The factor is the loss over that of a lone straight wire cut in the
          same way, extrapolated from three meshes as the square of the cell size; `spread` is the difference between extrapolations.
Every turn carries the same current. Lengths in wire radii: ring radius 1 / curvature, pitch 2 / wireOverPitch. factor: loss over that of
straight wire of length 2 pi (ring radius) for each turn. reactance: inductance of the whole / (mu0 ring radius).
"""
import json
import os

import mpmath
import numpy as np
from scipy.special import ellipe, ellipk, hyp2f1, jv


def kernel(rho1, rho2, z):
    m = 4 * rho1 * rho2 / ((rho1 + rho2) ** 2 + z * z)
    k = np.sqrt(m)
    return (2 / k - k) * ellipk(m) - 2 / k * ellipe(m)


def surface(count, wire_over_pitch, curvature, points):
    ring = 1 / curvature
    pitch = 2 / wire_over_pitch
    t = 2 * np.pi * np.arange(points) / points
    rho = ring + np.cos(t)
    z = np.sin(t)
    angle = t[:, None] - t[None, :]
    chord = 2 * np.abs(np.sin(angle / 2))
    k = np.arange(1, points // 2)
    logarithm = (np.cos(angle[:, :, None] * k) / k).sum(-1) + np.cos(points / 2 * angle) / points
    distance2 = (rho[:, None] - rho[None, :]) ** 2 + (z[:, None] - z[None, :]) ** 2
    factor = hyp2f1(-0.5, 1.5, 1, -distance2 / (4 * rho[:, None] * rho[None, :]))
    with np.errstate(all='ignore'):
        rest = kernel(rho[:, None], rho[None, :], z[:, None] - z[None, :]) + factor * np.log(chord)
    np.fill_diagonal(rest, np.log(8 * rho) - 2)
    n = count * points
    system = np.zeros((n + count, n + count))
    drive = np.zeros(n + count)
    weight = np.sqrt(ring / rho)
    for i in range(count):
        rows = slice(i * points, (i + 1) * points)
        for j in range(count):
            columns = slice(j * points, (j + 1) * points)
            if i == j:
                system[rows, columns] = (factor * logarithm + rest) / points
            else:
                system[rows, columns] = kernel(rho[:, None], rho[None, :], z[:, None] - z[None, :] + (i - j) * pitch) / points
        system[rows, n + i] = -weight
        system[n + i, rows] = weight / points
        drive[n + i] = 1
    x = np.linalg.solve(system, drive)
    return (x[:n] ** 2).mean(), x[n:].sum()


def mesh(rings, sectors, depths):
    crowding = max(1.0, depths / 2)
    u = np.linspace(0, 1, rings + 1)
    edges = (1 - np.exp(-crowding * u)) / (1 - np.exp(-crowding))
    cells = []
    for a, b in zip(edges, edges[1:]):
        n = max(6, int(round(sectors * (0.3 + 0.7 * b))))
        centre = 2 / 3 * (b**3 - a**3) / (b * b - a * a) * np.sin(np.pi / n) / (np.pi / n)
        mean_distance = 0.2235 * ((b - a) + (a + b) * np.pi / n)
        for t in (np.arange(n) + 0.5) * 2 * np.pi / n:
            cells.append((centre * np.cos(t), centre * np.sin(t), np.pi * (b * b - a * a) / n, mean_distance))
    return np.array(cells).T


def filaments(count, wire_over_pitch, curvature, depths, rings, sectors):
    x, z, area, own = mesh(rings, sectors, depths)
    n = len(x)
    ring = 1 / curvature
    rho = np.concatenate([ring + x] * count)
    z = np.concatenate([z + i * 2 / wire_over_pitch for i in range(count)])
    area = np.tile(area, count)
    apart = z[:, None] - z[None, :]
    np.fill_diagonal(apart, np.tile(own, count))
    inductance = np.sqrt(rho[:, None] * rho[None, :]) * kernel(rho[:, None], rho[None, :], apart)
    resistance = 2 * np.pi * rho / area / (2 * depths * depths)
    joined = np.zeros((n * count, count), complex)
    for i in range(count):
        joined[i * n : (i + 1) * n, i] = 1
    per_voltage = np.linalg.solve(inductance - 1j * np.diag(resistance), joined)
    current = per_voltage @ np.linalg.solve(joined.T @ per_voltage, np.ones(count))
    return (resistance * np.abs(current) ** 2).sum() / count / ring


def filament_factor(count, wire_over_pitch, curvature, depths):
    meshes = ((8, 26), (11, 36), (15, 50)) if count <= 3 else ((6, 20), (8, 26), (11, 36))
    values = [
        filaments(count, wire_over_pitch, curvature, depths, *m) / filaments(1, 0.5, 1e-4, depths, *m) for m in meshes
    ]
    cells = [1 / m[0] ** 2 for m in meshes]
    first = values[1] + (values[1] - values[0]) * cells[1] / (cells[0] - cells[1])
    second = values[2] + (values[2] - values[1]) * cells[2] / (cells[1] - cells[2])
    return second, abs(second - first)


def main():
    mpmath.mp.dps = 40
    ratios = []
    for size in (0.01, 0.5, 2.0, 7.0, 30.0, 212.0, 3000.0):
        for degrees in (-45, -10, 60):
            z = mpmath.mpc(size * mpmath.cos(mpmath.radians(degrees)), size * mpmath.sin(mpmath.radians(degrees)))
            z = mpmath.mpc(float(z.real), float(z.imag))
            for n in (1, 2, 5, 20):
                r = mpmath.besselj(n, z) / mpmath.besselj(n - 1, z)
                ratios.append({'n': n, 'z': [float(z.real), float(z.imag)], 'ratio': [float(r.real), float(r.imag)]})
    skin = []
    for count, spacing in ((1, 0.5), (2, 0.6), (3, 0.3), (3, 0.5), (3, 0.8), (5, 0.5), (5, 0.7), (6, 0.6), (6, 0.9), (8, 0.8), (12, 0.5), (12, 0.85)):
        for curvature in (0.02, 0.05, 0.1, 0.15, 0.2, 0.4):
            factor, reactance = surface(count, spacing, curvature, 64)
            check, _ = surface(count, spacing, curvature, 48)
            assert abs(factor / check - 1) < 1e-5, (count, spacing, curvature)
            row = {'count': count, 'wireOverPitch': spacing, 'curvature': curvature}
            skin.append(row | {'factor': round(float(factor), 6), 'reactance': round(float(reactance), 6)})
    depth = []
    for count, spacing, curvature, depths in (
        (1, 0.5, 0.15, 3),
        (2, 0.6, 0.0001, 1),
        (2, 0.6, 0.0001, 3),
        (2, 0.8, 0.0001, 5),
        (3, 0.8, 0.0001, 2),
        (3, 0.6, 0.1, 0.5),
        (3, 0.6, 0.1, 1),
        (3, 0.6, 0.1, 2),
        (3, 0.6, 0.1, 4),
        (3, 0.8, 0.05, 3),
        (5, 0.5, 0.1, 2),
        (5, 0.8, 0.05, 3),
        (6, 0.7, 0.02, 4),
    ):
        factor, spread = filament_factor(count, spacing, curvature, depths)
        row = {'count': count, 'wireOverPitch': spacing, 'curvature': curvature, 'radiusInSkinDepths': depths}
        depth.append(row | {'factor': round(float(factor), 5), 'spread': round(float(spread), 5)})
    # a lone straight wire against Bessel's functions: what the mesh itself is worth
    ka = (1 - 1j) * 3
    exact = (ka * jv(0, ka) / (2 * jv(1, ka))).real / 3**2
    print('lone wire, mesh over Bessel:', [filaments(1, 0.5, 1e-4, 3, *m) / exact for m in ((8, 26), (11, 36), (15, 50))])
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), 'values.json'), 'w') as f:
        sets = {'ratios': ratios, 'surface': skin, 'filaments': depth}
        f.write('{\n' + ',\n'.join(f'"{k}": [\n' + ',\n'.join(json.dumps(r) for r in v) + '\n]' for k, v in sets.items()) + '\n}\n')


if __name__ == '__main__':
    main()
