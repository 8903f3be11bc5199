"""Reference values for the measures of a sound.

Made with numpy 2.4 and scipy 1.17, which share no code with the engine. Run in this folder:
    python3 make.py > values.json

Noise comes from x(n+1) = 48271 x(n) mod (2^31 - 1) (Park, Miller), u = x/(2^31 - 1) - 1/2: the tests make the same.

tones      sines of any frequency in noise, least squares by numpy.linalg.lstsq
spectrum   scipy.signal.welch, Hann's window, half overlap, scaled to power per bin; scipy's equivalent noise bandwidth
coherence  scipy.signal.csd and welch on two noises and a filtered mixture of them: |Syx|^2/Sxx and what is left, bin by bin
bands      mean square in third octaves (exact edges 10^((n -+ 1/2)/10) Hz) of a noise with a slope, by the rectangle rule on a transform of
           the whole stretch without a window
filtered   the same noise through scipy.signal.freqs of 1/(1 + j f/21) by numpy.fft, padded with silence to twice its length
"""

import json
import math

import numpy as np
from scipy import signal

RATE = 48_000


def noise(seed, count):
    out = np.empty(count)
    x = seed
    for n in range(count):
        x = (48271 * x) % 2147483647
        out[n] = x / 2147483647 - 0.5
    return out


out = {}

# sines over no whole number of periods, two of them near each other
count = 6000
t = np.arange(count) / RATE
frequencies = [440.3, 997.0, 1003.0, 7600.5]
x = 0.3 + 0.1 * noise(1, count)
for a, f, p in zip([1.0, 0.5, 0.25, 0.125], frequencies, [0.1, -1.0, 2.0, 3.0]):
    x = x + a * np.cos(2 * math.pi * f * t + p)
columns = [np.ones(count)]
for f in frequencies:
    columns += [np.cos(2 * math.pi * f * t), np.sin(2 * math.pi * f * t)]
fit, _, _, _ = np.linalg.lstsq(np.array(columns).T, x, rcond=None)
rest = x - np.array(columns).T @ fit
out["tones"] = {
    "frequencies": frequencies, "amplitudes": [1.0, 0.5, 0.25, 0.125], "phases": [0.1, -1.0, 2.0, 3.0], "mean": fit[0],
    "re": fit[1::2].tolist(), "im": (-fit[2::2]).tolist(), "restRms": math.sqrt(np.mean(rest ** 2)),
}

count = 24_000
# one stream cut in two: streams of small seeds are multiples of each other
a, b = np.split(noise(2, 2 * count), 2)
size = 1024
f, p = signal.welch(a - a.mean(), RATE, "hann", size, size // 2, detrend=False)
keep = [1, 2, 3, 50, 200, 511, 512]
window = signal.get_window("hann", size)
out["spectrum"] = {
    "size": size, "bins": keep, "power": (p[keep] * RATE / size).tolist(), "whole": float(np.sum(p) * RATE / size),
    "noiseBandwidth": float(size * np.sum(window ** 2) / np.sum(window) ** 2),
}

# y follows a through a short filter, with b beside it
y = signal.lfilter([0.5, 0.3, -0.1], [1.0], a) + 0.2 * b
centre = lambda z: z - z.mean()
args = dict(fs=RATE, window="hann", nperseg=size, noverlap=size // 2, detrend=False)
_, syy = signal.welch(centre(y), **args)
_, sxx = signal.welch(centre(a), **args)
_, sxy = signal.csd(centre(a), centre(y), **args)
followed = np.abs(sxy) ** 2 / sxx
out["coherence"] = {
    "size": size, "bins": keep, "whole": (syy[keep] * RATE / size).tolist(), "followed": (followed[keep] * RATE / size).tolist(),
    "stretches": (count - size) // (size // 2) + 1,
    # what there truly is of either, in the whole band [V^2]
    "truth": {"coherent": float((0.25 + 0.09 + 0.01) / 12), "rest": float(0.04 / 12)},
}

# noise that falls by 6 dB per octave above 21 Hz
def shaped(z):
    padded = np.zeros(2 ** math.ceil(math.log2(2 * len(z))))
    padded[: len(z)] = z
    spectrum = np.fft.rfft(padded)
    axis = np.fft.rfftfreq(len(padded), 1 / RATE)
    _, h = signal.freqs([1.0], [1 / 21, 1.0], axis)  # 1/(1 + s/21) at s = j f
    spectrum = spectrum * h
    spectrum[0] = 0
    return np.fft.irfft(spectrum)[: len(z)]


z = shaped(a)
out["filtered"] = {"samples": [1, 100, 5000, 23_999], "values": z[[1, 100, 5000, 23_999]].tolist()}
whole = np.abs(np.fft.rfft(a - a.mean())) ** 2 / count ** 2
whole[1:-1] *= 2
axis = np.fft.rfftfreq(count, 1 / RATE)
bands = []
for nominal in [160, 1000, 8000]:
    n = round(10 * math.log10(nominal))
    low, high = 10 ** ((n - 0.5) / 10), 10 ** ((n + 0.5) / 10)
    inside = (axis >= low) & (axis < high)
    bands.append({"nominal": nominal, "low": low, "high": high, "power": float(np.sum(whole[inside]))})
out["bands"] = bands

print(json.dumps(out, indent=1))
