"""The same receivers, quasi-statically: at each of 256 instants of the audio cycle the carrier stands still, the tank is a linear
network solved by nodes at the instantaneous frequency, and the junction is its describing function.

Nothing here is taken from the integration: modified Bessel functions (scipy.special.ive) where the junction has no series resistance,
a cycle average with the Wright omega function where it has. The bypass capacitor is left out at audio and taken as a short at RF.

`solve_with_harmonics` does without both simplifications: 100 harmonics of the carrier in the junction's voltage and the bypass as it is at
each of them. Where it agrees with the integration and `solve` does not, the difference is what a describing function leaves out.
"""
import numpy as np
from scipy.optimize import brentq
from scipy.linalg import circulant
from scipy.special import ive, wrightomega

from circuits import thermal

ANGLES = (np.arange(2048) + 0.5) * np.pi / 2048
COSINES = np.cos(ANGLES)


def describe(detector, amplitude, output):
    """mean and in-phase fundamental current under amplitude cos(wt) - output"""
    i_s, r_s, t = detector['saturationCurrent'], detector['seriesResistance'], thermal(detector)
    if r_s == 0:
        x, e = amplitude / t, np.exp((amplitude - output) / t)
        return i_s * (e * ive(0, x) - 1), 2 * i_s * e * ive(1, x)
    v = amplitude * COSINES - output
    a = i_s * r_s / t
    i = t / r_s * wrightomega(v / t + a + np.log(a)).real - i_s
    return i.mean(), 2 * (i * COSINES).mean()


def settle(detector, load, amplitude):
    """output voltage and fundamental current once the load is satisfied"""
    output = brentq(lambda v: describe(detector, amplitude, v)[0] - v / load, -amplitude, amplitude, xtol=1e-18, rtol=1e-14)
    return output, describe(detector, amplitude, output)[1]


def port(tank, source_resistance, frequency):
    """Norton current per volt of e.m.f., and admittance, at the top of the tank"""
    s = 2j * np.pi * frequency
    c = s * tank['capacitance']
    if tank['kind'] == 'parallel':
        return 1 / source_resistance, 1 / source_resistance + 1 / (tank['coilResistance'] + s * tank['inductance']) + c
    if tank['kind'] == 'tapped':
        # loop currents: source loop through the lower part, tank loop through both parts; the top is held at a voltage
        upper = tank['upperResistance'] + s * tank['upper']
        lower = tank['lowerResistance'] + s * tank['lower']
        z = np.array([[source_resistance + lower, lower + s * tank['mutual']],
                      [lower + s * tank['mutual'], upper + lower + 2 * s * tank['mutual']]])
    else:
        z = np.array([[source_resistance + s * tank['link'], s * tank['mutual']],
                      [s * tank['mutual'], tank['coilResistance'] + s * tank['inductance']]])
    # column 0: current in the tank loop per volt of e.m.f. with the top shorted; column 1: per volt at the top
    y = np.linalg.inv(z)
    return -y[1, 0], y[1, 1] + c


def solve(case, points=256):
    modulation, detector, load = case['modulation'], case['detector'], case['load']['resistance']
    angle = 2 * np.pi * np.arange(points) / points
    output, amplitude = np.empty(points), np.empty(points)
    for k, a in enumerate(angle):
        frequency, emf = modulation['carrierFrequency'], case['source']['emf']
        if modulation['kind'] == 'FM':
            frequency = frequency + modulation['deviation'] * np.cos(a)
        else:
            emf = emf * (1 + modulation['depth'] * np.cos(a))
        current, admittance = port(case['tank'], case['source']['resistance'], frequency)
        drive = abs(current) * emf

        def misfit(amp):
            return abs(admittance + settle(detector, load, amp)[1] / amp) * amp - drive

        amplitude[k] = brentq(misfit, 1e-3 * drive / abs(admittance), 1.0001 * drive / admittance.real, xtol=1e-17, rtol=1e-13)
        output[k] = settle(detector, load, amplitude[k])[0]
    return output, amplitude, np.fft.rfft(output)[:4] / points * np.array([1, 2, 2, 2])


def law(detector, v):
    """current and its slope at each voltage"""
    i_s, r_s, t = detector['saturationCurrent'], detector['seriesResistance'], thermal(detector)
    if r_s == 0:
        i = i_s * np.expm1(np.minimum(v / t, 200))
        return i, (i + i_s) / t
    a = i_s * r_s / t
    i = t / r_s * wrightomega(v / t + a + np.log(a)).real - i_s
    g = (i + i_s) / t
    return i, g / (1 + r_s * g)


def solve_with_harmonics(case, points=64, samples=512, harmonics=100):
    modulation, detector, load = case['modulation'], case['detector'], case['load']
    k = np.arange(1, harmonics + 1)
    bins = np.empty(points)
    voltage = None
    for p, a in enumerate(2 * np.pi * np.arange(points) / points):
        frequency, emf = modulation['carrierFrequency'], case['source']['emf']
        if modulation['kind'] == 'FM':
            frequency = frequency + modulation['deviation'] * np.cos(a)
        else:
            emf = emf * (1 + modulation['depth'] * np.cos(a))
        ports = [port(case['tank'], case['source']['resistance'], n * frequency) for n in k]
        impedance = np.zeros(samples // 2 + 1, complex)
        impedance[0] = load['resistance']
        impedance[1:harmonics + 1] = [1 / y for _, y in ports] + 1 / (1 / load['resistance'] + 2j * np.pi * frequency * k * load['capacitance'])
        # the phase of the drive is free: take the open-circuit voltage as real
        drive = abs(ports[0][0] / ports[0][1]) * emf * np.cos(2 * np.pi * np.arange(samples) / samples)
        kernel = circulant(np.fft.irfft(impedance, samples))
        if voltage is None:
            voltage = staged(detector, kernel, drive)
        else:
            voltage = newton(detector, kernel, drive, voltage)
        bins[p] = load['resistance'] * law(detector, voltage)[0].mean()
    return np.fft.rfft(bins)[:4] / points * np.array([1, 2, 2, 2])


def newton(detector, kernel, drive, v):
    """v + Z i(v) = drive, the step cut until the misfit falls"""
    i, g = law(detector, v)
    miss = v + kernel @ i - drive
    for _ in range(200):
        step = np.linalg.solve(np.eye(len(v)) + kernel * g, -miss)
        share = 1.0
        while share > 1e-6:
            i, g = law(detector, v + share * step)
            new = v + share * step + kernel @ i - drive
            if np.abs(new).max() < np.abs(miss).max() or np.abs(miss).max() < 1e-14:
                break
            share /= 2
        v, miss = v + share * step, new
        if np.abs(share * step).max() < 1e-12 * np.abs(drive).max():
            return v
    raise RuntimeError('no steady state')


def staged(detector, kernel, drive):
    """from nothing up to the full drive"""
    v = np.zeros(len(drive))
    for share in np.geomspace(0.01, 1, 12):
        v = newton(detector, kernel, share * drive, v)
    return v
