"""Input impedance of a centre-fed tubular dipole by Hallen's integral equation, for comparison with the moment method of the engine.

An independent route: Hallen's equation (E. Hallen 1938; King, Theory of Linear Antennas, 1956, ch. II) instead of the reaction integral, piecewise
linear currents matched at points instead of sinusoids tested by themselves, the exact kernel of a tube by complete elliptic integrals.

  integral of I(z') K(z - z') dz' = -(j 4 pi / eta) [C cos kz + (V/2) sin k|z|],   I(+-h) = 0
  K(s) = mean over the circumference of exp(-jkR)/R, R^2 = s^2 + 4 a^2 sin^2(phi/2)

Needs numpy and scipy. Run: python3 hallen_dipole.py > hallen_dipole.json
Lengths in wavelengths. `half` is the number of linear pieces on each half; the gap is a delta function, so that values creep with it.
"""
import json
import numpy as np
from scipy.special import ellipkm1
from scipy.optimize import brentq

ETA = 376.730313668
K0 = 2 * np.pi
GX, GW = np.polynomial.legendre.leggauss(12)
PHI = np.pi * (np.arange(16) + 0.5) / 16  # midpoint rule, periodic and even


def kernel(s, a):
    s = np.abs(s)
    top = s * s + 4 * a * a
    static = 2 / (np.pi * np.sqrt(top)) * ellipkm1(s * s / top)
    r = np.sqrt(s[..., None] ** 2 + 4 * a * a * np.sin(PHI / 2) ** 2)
    smooth = ((np.exp(-1j * K0 * r) - 1) / r).mean(axis=-1)
    return static + smooth


def hat_integral(d, step, a):
    """Integral of a hat of half-width `step` centred at distance d from the matching point."""
    total = 0
    edges = [-step, 0, step]
    for lo, hi in zip(edges[:-1], edges[1:]):
        # panels that shrink towards the matching point, where the kernel has a logarithm
        cuts = {lo, hi}
        if lo - 1e-12 <= d <= hi + 1e-12 or min(abs(d - lo), abs(d - hi)) < 3 * step:
            for e in (lo, hi):
                if abs(d - e) < 1e-9 * step:
                    cuts |= {e + (1 if e == lo else -1) * (hi - lo) * 2.0 ** -q for q in range(1, 24)}
            cuts |= {lo + (hi - lo) * q / 4 for q in range(5)}
        cuts = sorted(cuts)
        for u, v in zip(cuts[:-1], cuts[1:]):
            x = (u + v) / 2 + (v - u) / 2 * GX
            total = total + np.sum(GW * (v - u) / 2 * (1 - np.abs(x) / step) * kernel(x - d, a))
    return total


def impedance(length, a, half):
    h = length / 2
    step = h / half
    table = [hat_integral(m * step, step, a) for m in range(2 * half + 1)]
    n = half
    A = np.zeros((n + 1, n + 1), complex)
    b = np.zeros(n + 1, complex)
    for i in range(n + 1):
        for j in range(n):
            A[i, j] = table[abs(i - j)] + (table[i + j] if j > 0 else 0)
        A[i, n] = 1j * 4 * np.pi / ETA * np.cos(K0 * i * step)
        b[i] = -1j * 4 * np.pi / ETA * 0.5 * np.sin(K0 * i * step)
    return 1 / np.linalg.solve(A, b)[0]


def resonance(ratio, lo, hi, half):
    x = brentq(lambda l: impedance(l, l / ratio / 2, half).imag, lo, hi, xtol=1e-6)
    return x, impedance(x, x / ratio / 2, half).real


if __name__ == "__main__":
    out = {
        "made_by": "tests/reference/wires/hallen_dipole.py (numpy, scipy)",
        "source": "Hallen's integral equation with the exact kernel; King, Theory of Linear Antennas (1956), ch. II",
        "impedance": [],
        "resonance": [],
    }
    for a in (1e-4, 1e-3, 3e-3):
        for length in (0.1, 0.25, 0.4, 0.48, 0.5, 0.6, 0.75, 0.9, 1.1, 1.3, 1.5):
            for half in (12, 24):
                if length / 2 / half < 2 * a:
                    continue
                z = impedance(length, a, half)
                out["impedance"].append({"length": length, "radius": a, "half": half, "R": round(z.real, 4), "X": round(z.imag, 4)})
    for ratio in (50, 500, 5000):
        for order, lo, hi in ((1, 0.43, 0.5), (3, 1.4, 1.56)):
            if ratio == 50 and order == 3:
                continue  # the gap's capacitance keeps so thick a dipole from a third resonance that stands still
            for half in (10, 20) if ratio == 50 else (20, 40):
                x, r = resonance(ratio, lo, hi, half)
                out["resonance"].append({"length_to_diameter": ratio, "order": order, "half": half, "length": round(x, 6), "R": round(r, 3)})
    print(json.dumps(out, indent=1))
