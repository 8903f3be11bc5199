"""Reference values for transforms, filters, rate changes and random numbers.

Made with numpy 2.4 and scipy 1.17, which share no code with the engine. Run in this folder:
    python3 make.py > values.json

fft        transforms of seeded noise, sizes that are powers of two, composite and prime (numpy.fft)
lowPass    coefficients of Kaiser-windowed low-passes (scipy.signal.firwin, scale=False) and the shape the order estimate gives (kaiser_beta, kaiser_atten)
resample   seeded noise taken to other rates with the same low-pass by scipy.signal.upfirdn
sixTaps    least that six weights can miss over a band, worst and rms over frequency at the worst place between samples (numpy.linalg.lstsq)
twister    numpy.random.RandomState(seed).random_sample
"""

import json
import math
import sys

import numpy as np
from scipy import signal

out = {"fft": [], "lowPass": [], "resample": [], "sixTaps": [], "twister": []}
random = np.random.RandomState(20251)

for size in [1, 2, 8, 64, 1024, 3, 12, 97, 360, 1000]:
    x = random.standard_normal(size) + 1j * random.standard_normal(size)
    y = np.fft.fft(x)
    keep = slice(None) if size <= 12 else slice(0, size, max(1, size // 12))
    out["fft"].append({
        "size": size, "re": x.real.tolist(), "im": x.imag.tolist(),
        "bins": list(range(size))[keep], "fftRe": y.real[keep].tolist(), "fftIm": y.imag[keep].tolist(),
    })


def low_pass(rate, pass_edge, stop_edge, attenuation, half):
    """2 half + 1 coefficients of the continuous kernel sampled at `rate`: the window spans exactly the length of the order estimate."""
    beta = signal.kaiser_beta(attenuation)
    length = (attenuation - 7.95) / (14.36 * (stop_edge - pass_edge)) * rate
    centre = (pass_edge + stop_edge) / 2
    n = np.arange(-half, half + 1)
    inside = np.abs(2 * n / length) <= 1
    window = np.where(inside, np.i0(beta * np.sqrt(np.maximum(0, 1 - (2 * n / length) ** 2))) / np.i0(beta), 0)
    return 2 * centre / rate * np.sinc(2 * centre / rate * n) * window


# firwin's window of N points spans N - 1 samples: stop edges chosen so that this is the length of the order estimate
for taps, rate, pass_edge, attenuation in [(65, 48000.0, 15000.0, 85.0), (49, 576000.0, 53000.0, 80.0), (201, 48000.0, 4500.0, 70.0)]:
    stop_edge = pass_edge + (attenuation - 7.95) / 14.36 * rate / (taps - 1)
    h = signal.firwin(taps, (pass_edge + stop_edge) / 2, window=("kaiser", signal.kaiser_beta(attenuation)), fs=rate, scale=False)
    w, response = signal.freqz(h, worN=4096, fs=rate)
    out["lowPass"].append({
        "rate": rate, "pass": pass_edge, "stop": stop_edge, "attenuation": attenuation, "taps": h.tolist(),
        "ripple": float(np.max(np.abs(np.abs(response[w <= pass_edge]) - 1))),
        "greatestInStopBand": float(np.max(np.abs(response[w >= stop_edge]))),
    })

for source, target, pass_edge, stop_edge, attenuation in [
    (48000, 192000, 15000.0, 33000.0, 90.0), (44100, 48000, 15000.0, 19000.0, 85.0), (192000, 1500000, 53000.0, 139000.0, 80.0), (96000, 48000, 15000.0, 19000.0, 85.0),
]:
    g = math.gcd(source, target)
    up, down = target // g, source // g
    x = random.standard_normal(160)
    dense = source * up
    half = int(math.ceil((attenuation - 7.95) / (14.36 * (stop_edge - pass_edge)) / 2 * dense)) + 1
    h = low_pass(dense, pass_edge, stop_edge, attenuation, half) * up
    y = signal.upfirdn(h, x, up, 1)[half:][::down]
    count = 100
    out["resample"].append({
        "from": source, "to": target, "pass": pass_edge, "stop": stop_edge, "attenuation": attenuation,
        "input": x.tolist(), "output": y[:count].tolist(),
    })

# six weights fitted in frequency by lstsq at Gauss-Legendre points of the band, for places p/16 between two samples: what they miss at best
nodes, gauss = np.polynomial.legendre.leggauss(80)
for share, interval in [(2 * 53 / 384, 0.256), (2 * 53 / 384, 0.0), (2 * 19 / 192, 0.128), (0.5, 0.0)]:
    k = np.arange(-2, 4)
    f = nodes * share / 2  # cycles a sample
    root = np.sqrt(gauss / 2)
    worst = 0.0
    squares = []
    edge = np.linspace(-share / 2, share / 2, 2001)
    for p in np.arange(16) / 16:
        wanted = lambda f: np.exp(2j * np.pi * f * p) * np.sinc(f * interval)
        system = np.exp(2j * np.pi * f[:, None] * k[None, :])
        c = np.linalg.lstsq(np.vstack([(system * root[:, None]).real, (system * root[:, None]).imag]),
                            np.concatenate([(wanted(f) * root).real, (wanted(f) * root).imag]), rcond=None)[0]
        miss = np.abs(np.exp(2j * np.pi * edge[:, None] * k[None, :]) @ c - wanted(edge))
        worst = max(worst, float(miss.max()))
        squares.append(float(np.mean(miss**2)))
    out["sixTaps"].append({"share": share, "interval": interval, "places": 16, "worst": worst, "rms": math.sqrt(max(squares))})

for seed in [0, 1, 20251, 4294967295]:
    r = np.random.RandomState(seed)
    values = r.random_sample(2000)
    out["twister"].append({"seed": seed, "first": values[:5].tolist(), "last": values[-5:].tolist()})

json.dump(out, sys.stdout)
