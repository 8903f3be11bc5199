"""Three complete sets worked from the mast to the sound level, with none of the project's own methods. Writes cases.json beside this file.

Run: python3 make.py     (some seconds; the tests of the project do not need it, they read cases.json)
Made with Python 3.11.7, numpy 2.4.6, scipy 1.17.1.

    place      free space: E = sqrt(eta D P / 4 pi) / r, or a field that was measured
    aerial     dipole: the field of its own sinusoidal current integrated over its surface (induced e.m.f.); or given values
    tank       node voltages of the written-out circuit, numpy.linalg.solve at the frequency of every instant (no interpolation)
    detector   modified Bessel functions of the whole junction, scipy.special.ive; amplitude by bracketing at every instant
    phones     the differential equations of bypass, load, transformer and earpiece, scipy.integrate (no harmonic balance)
    ear        level = sensitivity + 20 log10 of the rms of the fundamental

Every voltage and current on the way is written down with its convention. A set is given to the test as it is described to the engine.

Sources: ITU-R P.525 (field), C. A. Balanis, Antenna Theory, 3rd ed., sec. 4.5 and 8.5 (dipole), Ramo, Whinnery & Van Duzer sec. 4.5 (skin effect),
K. K. Clarke & D. T. Hess, Communication Circuits (1971) ch. 4 (junction under a sinusoid), D. Byrne et al. 1994 (speech), ITU-R BS.412-9 (its level).
"""
import json
import math
import pathlib

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.special import ive, jv

HERE = pathlib.Path(__file__).parent
C0, ETA, MU0 = 299792458.0, 376.730313668, 4e-7 * math.pi
KB, Q, T = 1.380649e-23, 1.602176634e-19, 300.0
EARTH_RADIUS = 8.5e6


# ---- place and aerial -------------------------------------------------------------------------------------------------------------------------------


def free_space(power, distance, mast, height):
    """[V/m rms]; e.r.p. over a half-wave dipole, whose directivity is found by integrating its pattern"""
    pattern = lambda u: (math.cos(math.pi / 2 * u) / math.sqrt(1 - u * u)) ** 2
    directivity = 2 / quad(pattern, -1, 1)[0]
    slant = math.hypot(distance, mast - height)
    return math.sqrt(ETA * directivity * power / (4 * math.pi)) / slant


def copper_per_metre(diameter, frequency):
    """[ohm/m]"""
    rho, a = 1 / 58e6, diameter / 2
    depth = math.sqrt(rho / (math.pi * frequency * MU0))
    y = (1 - 1j) * a / depth
    return (rho / (math.pi * a * a) * (y / 2) * jv(0, y) / jv(1, y)).real


def dipole(length, diameter, frequency):
    """terminal impedance [ohm] with its metal, and effective length at right angles [m]"""
    k, half, a = 2 * math.pi * frequency / C0, length / 2, diameter / 2
    current = lambda z: math.sin(k * (half - abs(z)))
    feed = math.sin(k * half)

    def against(z):
        wave = lambda r: np.exp(-1j * k * r) / r
        ez = wave(math.hypot(a, z - half)) + wave(math.hypot(a, z + half)) - 2 * math.cos(k * half) * wave(math.hypot(a, z))
        # times j eta/(4 pi): minus the field along the surface, for a maximum current of one ampere
        return 1j * ETA / (4 * math.pi) * ez * current(z)

    split = [-half + 5 * a, -20 * a, 0, 20 * a, half - 5 * a]
    part = lambda f: quad(f, -half, half, points=split, limit=400, epsabs=1e-10)[0]
    z = (part(lambda x: against(x).real) + 1j * part(lambda x: against(x).imag)) / feed**2
    metal = copper_per_metre(diameter, frequency) * quad(lambda x: current(x) ** 2, -half, half)[0] / feed**2
    reach = quad(lambda x: current(x), -half, half)[0] / feed
    return z + metal, reach


# ---- radio circuits, node by node -------------------------------------------------------------------------------------------------------------------


def capacitor(w, c, loss):
    return 1j * w * c + w * c * loss


def variable(tank, angle):
    c = tank['capacitor']
    return c['minimum'] + (c['maximum'] - c['minimum']) * angle / c['rotation']


def radio(case, f, loss_at):
    """open-circuit volts for one volt of e.m.f., and impedance, at the detector's port"""
    tank, w = case['tank'], 2 * math.pi * f
    coil, cap = tank['coil'], tank['capacitor']
    r_coil = 2 * math.pi * coil['frequency'] * coil['inductance'] / coil['q'] * math.sqrt(loss_at / coil['frequency'])
    taps = sorted({tank[c]['turns'] for c in ('aerialCoupling', 'detectorCoupling') if tank[c]['kind'] == 'tap'})
    places = [0, *taps, coil['turns']]
    n = np.diff(places)
    share = np.outer(n, n) * (coil['tapCoupling'] + (1 - coil['tapCoupling']) * np.eye(len(n)))
    inductance = coil['inductance'] * share / share.sum()
    z_coil = 1j * w * inductance + np.diag(r_coil * n / coil['turns'])
    # nodes: taps from below, top, then those of series capacitors
    name = {f'tap{t}': i for i, t in enumerate(taps)}
    name['top'] = len(taps)
    node = {}
    for role in ('aerial', 'detector'):
        c = tank[role + 'Coupling']
        if c['kind'] == 'direct':
            node[role] = name['top']
        elif c['kind'] == 'tap':
            node[role] = name[f"tap{c['turns']}"]
        else:
            node[role] = name.setdefault(role, len(name))
    size = len(name)
    y = np.zeros((size, size), complex)
    # the coil's stretches between earth, taps and top: branch currents Z^-1 (differences of node voltages)
    ends = [None, *range(len(taps) + 1)]
    incidence = np.zeros((len(n), size))
    for b in range(len(n)):
        incidence[b, ends[b + 1]] = 1
        if ends[b] is not None:
            incidence[b, ends[b]] = -1
    y += incidence.T @ np.linalg.inv(z_coil) @ incidence
    top = name['top']
    plates = capacitor(2 * math.pi * f, variable(tank, case['angle']), 0) + 2 * math.pi * loss_at * variable(tank, case['angle']) * cap['lossTangent']
    y[top, top] += 1j * w * (coil['selfCapacitance'] + tank['strayCapacitance'])
    y[top, top] += 1 / (cap['contactResistance'] + 1j * w * cap['leadInductance'] + 1 / plates)
    for role in ('aerial', 'detector'):
        c = tank[role + 'Coupling']
        if c['kind'] == 'series-capacitor':
            a, b, yc = top, node[role], 1j * w * c['capacitance']
            y[[a, b], [a, b]] += yc
            y[[a, b], [b, a]] -= yc
    if 'detectorReturn' in tank:
        y[node['detector'], node['detector']] += 1 / tank['detectorReturn']
    y[node['detector'], node['detector']] += 1j * w * case['detector']['junctionCapacitance']
    z_aerial = case['impedance'](f)
    y[node['aerial'], node['aerial']] += 1 / z_aerial
    drive = np.zeros((size, 2), complex)
    drive[node['aerial'], 0] = 1 / z_aerial
    drive[node['detector'], 1] = 1
    v = np.linalg.solve(y, drive)[node['detector']]
    return v[0], v[1] + 1 / (1j * w * case['phones']['bypass'])


# ---- detector ---------------------------------------------------------------------------------------------------------------------------------------


def junction(detector):
    i_s, nvt = detector['saturationCurrent'], detector['ideality'] * KB * T / Q

    def mean(a, v):
        x = a / nvt
        return i_s * (math.exp(x - v / nvt) * ive(0, x) - 1)

    def fundamental(a, v):
        x = a / nvt
        return 2 * i_s * math.exp(x - v / nvt) * ive(1, x)

    def hold(drive, z, v):
        """amplitude across the junction [V peak]: |A + Z I1(A)| = drive"""
        return brentq(lambda a: abs(a + z * fundamental(a, v)) - drive, 0, drive, xtol=1e-16, rtol=1e-13)

    return mean, fundamental, hold


# ---- phones as differential equations ---------------------------------------------------------------------------------------------------------------


def phones_equations(case):
    """derivative of the states under a detector current, the output voltage, the earpiece voltage; the detector's current also passes the coil, whose
    milliohms do not count"""
    p, e = case['phones'], case['phones']['earpiece']
    g = 1 / p['load'] if 'load' in p else 0.0
    if e['kind'] == 'piezo':
        r = e['lossTangent'] / (2 * math.pi * 1000 * e['capacitance'])

        def move(i, s):
            v, crystal = s
            inner = (v - crystal) / r
            return [(i - v * g - v / e['leakResistance'] - inner) / p['bypass'], inner / e['capacitance']]

        return move, 2, lambda s: s[0], lambda s: s[0]
    if 'transformer' not in p:

        def move(i, s):
            v, il = s
            return [(i - v * g - il) / p['bypass'], (v - e['resistance'] * il) / e['inductance']]

        return move, 2, lambda s: s[0], lambda s: s[0]
    t = p['transformer']
    k = math.sqrt(1 - t['leakageInductance'] / t['primaryInductance'])
    l1 = t['primaryInductance']
    l2 = l1 / t['ratio'] ** 2 + e['inductance']
    m = k * l1 / t['ratio']
    r2 = t['secondaryResistance'] + e['resistance']
    det = l1 * l2 - m * m

    def move(i, s):
        # v across bypass and load, i1 and i2 into the dotted ends; the winding stands behind its resistance, core loss across it:
        # v - R1 (i1 + u/Rc) = u
        v, i1, i2 = s
        u = (v - t['primaryResistance'] * i1) / (1 + t['primaryResistance'] / t['coreLoss'])
        into = i1 + u / t['coreLoss']
        e1, e2 = u, -r2 * i2
        return [(i - v * g - into) / p['bypass'], (l2 * e1 - m * e2) / det, (l1 * e2 - m * e1) / det]

    def earpiece(s):
        v, i1, i2 = s
        u = (v - t['primaryResistance'] * i1) / (1 + t['primaryResistance'] / t['coreLoss'])
        e2 = -r2 * i2
        di2 = (l1 * e2 - m * u) / det
        return -(e['resistance'] * i2 + e['inductance'] * di2)

    return move, 3, lambda s: s[0], earpiece


# ---- the whole --------------------------------------------------------------------------------------------------------------------------------------


def work(case):
    mod, f0, tone = case['modulation'], case['frequency'], case['tone']
    emf = case['emf']
    mean, fundamental, hold = junction(case['detector'])
    move, size, output, earpiece = phones_equations(case)

    def envelope(swing, n=256):
        """amplitude and impedance through one period of the tone, as periodic splines over phase"""
        phase = np.arange(n) / n * 2 * math.pi
        if mod['kind'] == 'fm':
            points = [radio(case, f0 + swing * math.cos(a), f0) for a in phase]
            d = np.array([math.sqrt(2) * emf * abs(v) for v, _ in points])
            z = np.array([z for _, z in points])
        else:
            # quasi-static: the tank of this set is far broader than its sidebands
            v, z0 = radio(case, f0, f0)
            d = math.sqrt(2) * emf * abs(v) * (1 + swing * np.cos(phase))
            z = np.full(n, z0)
        close = lambda x: CubicSpline(np.append(phase, 2 * math.pi), np.append(x, x[0]), bc_type='periodic')
        return close(d), close(z.real), close(z.imag)

    def run(swing, periods=80, n=256):
        d, zr, zi = envelope(swing)
        w = 2 * math.pi * tone
        guess = [0.0]

        def current(t, v):
            a = (w * t) % (2 * math.pi)
            drive = float(d(a))
            return mean(hold(drive, complex(zr(a), zi(a)), v), v)

        # start at rest, the modulation off
        resistance = case['directResistance']
        v0 = brentq(lambda v: v - resistance * mean(hold(float(d(math.pi / 2)), complex(zr(math.pi / 2), zi(math.pi / 2)), v), v), 0, float(d(math.pi / 2)))
        start = case['start'](v0)
        rhs = lambda t, s: move(current(t, output(s)), s)
        period = 1 / tone
        grid = (periods - 1 + np.arange(n) / n) * period
        y = solve_ivp(rhs, [0, periods * period], start, method='LSODA', rtol=1e-8, atol=1e-13, t_eval=grid).y
        bins = np.fft.rfft([earpiece(y[:, k]) for k in range(n)]) / n * 2
        return bins, float(np.mean([output(y[:, k]) for k in range(n)])), v0

    v, z = radio(case, f0, f0)
    bins, mean_output, v0 = run(case['swing'])
    small, _, _ = run(case['swing'] / 50)
    drive = math.sqrt(2) * emf * abs(v)
    amplitude = hold(drive, z, v0)
    rms = abs(bins[1]) / math.sqrt(2)
    per_rms = abs(small[1]) / (case['swing'] / 50)  # volts rms for one unit rms of swing
    return {
        'field': case['field'],
        'emf': emf,
        'available': emf**2 / (4 * case['impedance'](f0).real),
        'drive': drive,
        'intoDetector': 0.5 * amplitude * fundamental(amplitude, v0),
        'meanOutput': mean_output,
        'audioVoltage': rms,
        'secondHarmonic': float(abs(bins[2]) / abs(bins[1])),
        'soundLevel': case['sensitivity'] + 20 * math.log10(rms),
        'speechBand': case['sensitivity'] + 20 * math.log10(per_rms * case['speechSwing']),
    }


# speech in the one-third octave of the tone, as a share of all bands from 63 Hz up to `limit`, pre-emphasised by tau
BANDS = [63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000]
BYRNE = [38.6, 43.5, 54.4, 57.7, 56.8, 60.2, 60.3, 59.0, 62.1, 62.1, 60.5, 56.8, 53.7, 53.0, 52.0, 48.7, 48.1, 46.8, 45.6, 44.5, 44.3, 43.7, 43.4, 41.3, 40.7]


def share(tone, limit, tau):
    power = {f: 10 ** (l / 10) * (1 + (2 * math.pi * f * tau) ** 2) for f, l in zip(BANDS, BYRNE) if f <= limit}
    return power[tone] / sum(power.values())


VHF_CAPACITOR = {'minimum': 3e-12, 'maximum': 20e-12, 'rotation': math.pi, 'law': {'kind': 'capacitance-linear'}, 'lossTangent': 2e-4,
                 'contactResistance': 0.02, 'leadInductance': 3e-9}
COMMON = {'wiring': {'length': 0, 'diameter': 1e-3}, 'joints': {'count': 0, 'resistance': 0}, 'strayCapacitance': 1.5e-12}


def dipole_and_tap():
    f = 98e6
    field = free_space(500, 5000, 150, 5)
    z, reach = dipole(1.45, 4e-3, f)
    step = 0.005 * f
    around = {g: dipole(1.45, 4e-3, g)[0] for g in (f - step, f, f + step)}
    slope = (around[f + step] - around[f - step]) / (2 * step)
    return {
        'name': 'FM: dipole on a tap, piezo',
        'frequency': f, 'tone': 1000.0, 'swing': 75e3, 'angle': 1.86, 'field': field, 'emf': field * reach,
        'modulation': {'kind': 'fm', 'deviation': 75e3, 'preEmphasis': 50e-6, 'stereo': False},
        'impedance': lambda g: z + slope * (g - f),
        'station': {'power': 500, 'distance': 5000, 'mastHeight': 150, 'siteHeight': 5, 'method': 'free-space'},
        'aerial': {'kind': 'dipole', 'length': 1.45, 'diameter': 4e-3, 'metal': 'copper', 'orientation': {'kind': 'horizontal', 'broadside': 0}},
        'tank': {**COMMON,
                 'coil': {'kind': 'electrical', 'inductance': 172e-9, 'q': 320, 'frequency': 100e6, 'selfCapacitance': 0.5e-12, 'turns': 5, 'tapCoupling': 0.5},
                 'capacitor': VHF_CAPACITOR, 'aerialCoupling': {'kind': 'tap', 'turns': 0.5}, 'detectorCoupling': {'kind': 'direct'}},
        'detector': {'saturationCurrent': 2e-6, 'ideality': 1.05, 'junctionCapacitance': 0.2e-12},
        'phones': {'bypass': 470e-12, 'load': 500e3,
                   'earpiece': {'kind': 'piezo', 'capacitance': 15e-9, 'lossTangent': 0.02, 'leakResistance': 50e6}},
        'directResistance': 1 / (1 / 500e3 + 1 / 50e6), 'start': lambda v: [v, v],
        'sensitivity': 110.0,
        'speechSwing': 19e3 / math.sqrt(2) * math.sqrt(share(1000, 15e3, 50e-6)),
    }


def beam_and_capacitor():
    f, field, gain = 104e6, 20e-3, 10 ** 0.9
    reach = C0 / f * math.sqrt(gain * 75 / (math.pi * ETA))
    return {
        'name': 'FM: beam through a small capacitor, detector on a tap, balanced armature behind a transformer',
        'frequency': f, 'tone': 1000.0, 'swing': 0.9 * 75e3, 'angle': 1.18, 'field': field, 'emf': field * reach,
        'modulation': {'kind': 'fm', 'deviation': 75e3, 'preEmphasis': 50e-6, 'stereo': True},
        'impedance': lambda g: 75.0 + 0j,
        'station': {'measuredField': field, 'mastHeight': 100, 'siteHeight': 8},
        'aerial': {'kind': 'electrical', 'impedance': [{'frequency': f, 'resistance': 75, 'reactance': 0}], 'gain': 9,
                   'orientation': {'kind': 'horizontal', 'broadside': 0}, 'frontToBack': 0},
        'tank': {**COMMON,
                 'coil': {'kind': 'electrical', 'inductance': 180e-9, 'q': 300, 'frequency': 100e6, 'selfCapacitance': 0.6e-12, 'turns': 6, 'tapCoupling': 0.45},
                 'capacitor': VHF_CAPACITOR, 'aerialCoupling': {'kind': 'series-capacitor', 'capacitance': 1.2e-12},
                 'detectorCoupling': {'kind': 'tap', 'turns': 3}},
        'detector': {'saturationCurrent': 3e-6, 'ideality': 1.06, 'junctionCapacitance': 0.18e-12},
        'phones': {'bypass': 220e-12,
                   'transformer': {'ratio': 5, 'primaryInductance': 12, 'primaryResistance': 900, 'secondaryResistance': 35, 'leakageInductance': 0.12,
                                   'coreLoss': 300e3, 'capacitance': 0},
                   'earpiece': {'kind': 'magnetic', 'resistance': 300, 'inductance': 40e-3}},
        'directResistance': 900.0, 'start': lambda v: [v, v / 900, 0.0],
        'sensitivity': 118.0,
        'speechSwing': math.sqrt((19e3 / math.sqrt(2)) ** 2 - (0.09 * 75e3) ** 2 / 2) * math.sqrt(share(1000, 15e3, 50e-6)),
    }


def wire_and_tap():
    f, field = 900e3, 12e-3
    return {
        'name': 'AM: wire on a tap, high-resistance magnetic phones',
        'frequency': f, 'tone': 400.0, 'swing': 0.5, 'angle': 0.54, 'field': field, 'emf': field * 6.0,
        'modulation': {'kind': 'am', 'depth': 0.5},
        'impedance': lambda g: 60.0 - 700j + 0j * g,
        'station': {'measuredField': field, 'mastHeight': 60, 'siteHeight': 2},
        'aerial': {'kind': 'electrical', 'impedance': [{'frequency': f, 'resistance': 60, 'reactance': -700}], 'effectiveLength': 6.0,
                   'orientation': {'kind': 'vertical'}, 'frontToBack': 0},
        'tank': {**COMMON, 'strayCapacitance': 10e-12,
                 'coil': {'kind': 'electrical', 'inductance': 240e-6, 'q': 60, 'frequency': 1e6, 'selfCapacitance': 8e-12, 'turns': 80, 'tapCoupling': 0.8},
                 'capacitor': {'minimum': 15e-12, 'maximum': 365e-12, 'rotation': math.pi, 'law': {'kind': 'capacitance-linear'}, 'lossTangent': 3e-4,
                               'contactResistance': 0.1, 'leadInductance': 50e-9},
                 'aerialCoupling': {'kind': 'tap', 'turns': 30}, 'detectorCoupling': {'kind': 'tap', 'turns': 40}},
        'detector': {'saturationCurrent': 1.5e-6, 'ideality': 1.2, 'junctionCapacitance': 1e-12},
        'phones': {'bypass': 1e-9, 'earpiece': {'kind': 'magnetic', 'resistance': 4000, 'inductance': 1.6}},
        'directResistance': 4000.0, 'start': lambda v: [v, v / 4000],
        'sensitivity': 98.0,
        'speechSwing': 0.5 * 10 ** (-12 / 20) * math.sqrt(share(400, 4500, 0)),
    }


def main():
    made = []
    for build in (dipole_and_tap, beam_and_capacitor, wire_and_tap):
        case = build()
        result = work(case)
        print(case['name'], {k: float(f'{v:.6g}') for k, v in result.items()}, flush=True)
        kept = {k: v for k, v in case.items() if not callable(v) and k not in ('field', 'emf', 'directResistance', 'speechSwing')}
        made.append({**kept, 'result': result})
    document = {
        'about': __doc__.strip().splitlines()[0],
        'conventions': 'SI; field, emf and audio voltage rms; drive peak; powers mean; sound level dB SPL on the coupler; speech band: the one-third octave of the tone',
        'cases': made,
    }
    (HERE / 'cases.json').write_text(json.dumps(document, indent=1) + '\n')


if __name__ == '__main__':
    main()
