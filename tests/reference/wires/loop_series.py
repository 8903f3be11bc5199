"""Admittance of a circular wire loop by its Fourier series, for comparison with polygons by the moment method.

Y = -(j / pi eta) [1/a_0 + 2 sum 1/a_n],  a_n = (kb/2)(K_{n+1} + K_{n-1}) - (n^2/kb) K_n,
K_n = (1/pi) integral from 0 to pi of cos(n phi) exp(-jkR) b/R, R^2 = 4 b^2 sin^2(phi/2) + 4 a^2 sin^2(psi/2), mean over psi: the current flows on a tube.

Source: J. E. Storer, AIEE Trans. 75 pt I (1956) 606; T. T. Wu, J. Math. Phys. 3 (1962) 1301; the mean over the tube in place of their thin-wire limit.
A delta gap excites every harmonic: the series has no limit, so the values are given by the number of terms.

Needs numpy. Run: python3 loop_series.py > loop_series.json   (lengths in wavelengths)
"""
import json
import numpy as np

ETA = 376.730313668
GX, GW = np.polynomial.legendre.leggauss(40)
UX, UW = np.polynomial.legendre.leggauss(24)
U = (1 + UX) / 2
PSI, PSIW = np.pi * U**3, 1.5 * U * U * UW


def k_n(n, kb, ratio):
    total = 0
    edges = np.concatenate([[0], np.pi * 2.0 ** (-np.arange(30, -1, -1.0))])
    for lo, hi in zip(edges[:-1], edges[1:]):
        parts = max(1, int(np.ceil(n * (hi - lo) / 6)))
        for q in range(parts):
            u, v = lo + (hi - lo) * q / parts, lo + (hi - lo) * (q + 1) / parts
            phi = (u + v) / 2 + (v - u) / 2 * GX
            r = np.sqrt(4 * np.sin(phi / 2)[:, None] ** 2 + 4 * ratio**2 * np.sin(PSI / 2)[None, :] ** 2)
            g = (np.exp(-1j * kb * r) / r * PSIW).sum(axis=1)
            total += np.sum(GW * (v - u) / 2 * g * np.cos(n * phi))
    return total / np.pi


def impedances(kb, ratio, terms):
    k = [k_n(n, kb, ratio) for n in range(max(terms) + 2)]
    y, out = 0, {}
    for n in range(max(terms) + 1):
        a = kb / 2 * (k[n + 1] + k[abs(n - 1)]) - n * n / kb * k[n]
        y += -1j / (np.pi * ETA) * (1 if n == 0 else 2) / a
        if n in terms:
            out[n] = 1 / y
    return out


if __name__ == "__main__":
    rows = []
    for circumference in (0.1, 0.3, 0.8, 1.0, 1.2):
        for ratio in (0.00347513, 0.01, 0.0423360):
            for n, z in impedances(2 * np.pi * circumference / (2 * np.pi), ratio, (12, 24, 36)).items():
                rows.append({"circumference": circumference, "wireOverLoopRadius": ratio, "terms": n, "R": round(z.real, 5), "X": round(z.imag, 4)})
    print(json.dumps({"made_by": "tests/reference/wires/loop_series.py (numpy)", "source": "Storer 1956, Wu 1962, tube kernel", "rows": rows}, indent=1))
