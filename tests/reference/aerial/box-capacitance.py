"""Capacitance of conducting boxes in free space by surface charge, for the body that a set alone offers its rod.

Method of moments: each face in n x n rectangles shrinking towards the edges (cosine spacing), constant charge on each, potential
by the exact integral of 1/r over a rectangle, matched at the centres; two sizes extrapolated. numpy only.
Check on the method: unit cube, 0.66068 (Hwang & Mascagni, J. Appl. Phys. 95 (2004) 3798, from memory).
Output: box-capacitance.json, C / (4 pi eps0 s), s the largest side.
"""
import json
import numpy as np


def faces(dims, n):
    out = []
    t = 0.5 * (1 - np.cos(np.pi * np.arange(n + 1) / n))
    for axis in range(3):
        u, v = [i for i in range(3) if i != axis]
        for side in (-0.5, 0.5):
            for i in range(n):
                for j in range(n):
                    lo, hi = np.zeros(3), np.zeros(3)
                    lo[axis] = hi[axis] = side * dims[axis]
                    lo[u], hi[u] = (t[i] - 0.5) * dims[u], (t[i + 1] - 0.5) * dims[u]
                    lo[v], hi[v] = (t[j] - 0.5) * dims[v], (t[j + 1] - 0.5) * dims[v]
                    out.append((axis, u, v, lo, hi))
    return out


def capacitance(dims, n):
    f = faces(dims, n)
    centre = np.array([(a[3] + a[4]) / 2 for a in f])
    area = np.array([(a[4][a[1]] - a[3][a[1]]) * (a[4][a[2]] - a[3][a[2]]) for a in f])
    m = np.zeros((len(f), len(f)))
    for q, (axis, u, v, lo, hi) in enumerate(f):
        z = np.abs(centre[:, axis] - lo[axis])
        total = 0
        for su, x in ((1, hi[u] - centre[:, u]), (-1, lo[u] - centre[:, u])):
            for sv, y in ((1, hi[v] - centre[:, v]), (-1, lo[v] - centre[:, v])):
                r = np.sqrt(x * x + y * y + z * z)
                safe = np.where(z > 1e-12, z, 1)
                tail = np.where(z > 1e-12, z * np.arctan(x * y / (safe * r)), 0)
                xx = np.where(np.abs(y + r) > 1e-14, x * np.log(np.maximum(y + r, 1e-300)), 0)
                yy = np.where(np.abs(x + r) > 1e-14, y * np.log(np.maximum(x + r, 1e-300)), 0)
                total = total + su * sv * (xx + yy - tail)
        m[:, q] = total
    charge = np.linalg.solve(m, np.ones(len(f)))
    return float(charge @ area)


rows = []
for dims in ((1, 1, 1), (1, 2 / 3, 1 / 3), (1, 1, 0.25), (1, 0.5, 0.5)):
    a, b = capacitance(dims, 10), capacitance(dims, 20)
    rows.append({'sides': dims, 'n10': a, 'n20': b, 'capacitance': b + (b - a) / 3})
json.dump(rows, open('box-capacitance.json', 'w'), indent=1)
print(json.dumps(rows, indent=1))
