"""Reference values of the special functions behind the place stage.

Made with mpmath at 40 digits, which shares no code with the engine. Run in this folder:
    python3 special_functions.py > special-functions.json
"""

import json
import sys

import mpmath as mp

mp.mp.dps = 40


def pair(z):
    return [float(mp.re(z)), float(mp.im(z))]


def faddeeva(z):
    return mp.exp(-z * z) * mp.erfc(-1j * z)


out = {"faddeeva": [], "airy": [], "erfc": [], "quantile": [], "airyZeros": [], "airySlopeZeros": []}
for r in ["0.001", "0.3", "1", "2.5", "4", "6", "9", "25", "400"]:
    for degrees in [0, 20, 45, 75, 90, 120, 160, 180]:
        z = mp.mpf(r) * mp.expjpi(mp.mpf(degrees) / 180)
        out["faddeeva"].append({"z": pair(z), "w": pair(faddeeva(mp.mpc(*pair(z))))})
for r, degrees in [("0.5", 200), ("2", 225), ("3", 190)]:
    z = mp.mpf(r) * mp.expjpi(mp.mpf(degrees) / 180)
    out["faddeeva"].append({"z": pair(z), "w": pair(faddeeva(mp.mpc(*pair(z))))})
for r in ["0.01", "1", "2.5", "3.99", "4.01", "5.5", "7", "8.49", "8.51", "12", "40"]:
    for degrees in [0, 35, 60, 90, 119, 121, 150, 180, -45, -120, -170]:
        z = mp.mpc(*pair(mp.mpf(r) * mp.expjpi(mp.mpf(degrees) / 180)))
        value, slope = mp.airyai(z), mp.airyai(z, derivative=1)
        # scaled by the real part of the exponent, as neither fits a double everywhere
        size = mp.re(mp.log(value))
        out["airy"].append({
            "z": pair(z),
            "logSize": float(size),
            "value": pair(value / mp.exp(size)),
            "derivative": pair(slope / mp.exp(size)),
        })
for x in ["-2", "0", "0.2", "1", "3", "6"]:
    out["erfc"].append({"x": float(x), "erfc": float(mp.erfc(mp.mpf(float(x))))})
for p in [1e-6, 0.001, 0.05, 0.1, 0.1587, 0.5, 0.8, 0.9, 0.999]:
    out["quantile"].append({"p": p, "z": float(mp.sqrt(2) * mp.erfinv(2 * mp.mpf(p) - 1))})
for s in [1, 2, 3, 10, 60, 120]:
    out["airyZeros"].append({"s": s, "zero": float(-mp.airyaizero(s))})
    out["airySlopeZeros"].append({"s": s, "zero": float(-mp.airyaizero(s, derivative=1))})
json.dump(out, sys.stdout, indent=1)
print()
