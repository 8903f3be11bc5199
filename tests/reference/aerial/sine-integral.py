"""Sine and cosine integrals to 40 digits by mpmath, rounded to doubles; cin = C + ln x - ci. Output: sine-integral.json."""
import json
import mpmath as mp

mp.mp.dps = 40
rows = []
for x in [1e-6, 1e-3, 0.01, 0.1, 0.5, 1, 2, 3, 4, 5, 5.9999, 6, 6.0001, 7, 7.9999, 8, 10, 15, 20, 31.4, 50, 100, 1000]:
    z = mp.mpf(x)
    rows.append({'x': x, 'si': float(mp.si(z)), 'ci': float(mp.ci(z)), 'cin': float(mp.euler + mp.log(z) - mp.ci(z))})
json.dump(rows, open('sine-integral.json', 'w'), indent=1)
