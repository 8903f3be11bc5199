"""Compares cases.json, integrated with the carrier, with the quasi-static calculation of quasi_static.py; prints one line a case.

Run: python3 check.py     fails where a case in which a describing function holds differs by more than 1 % in the mean, 0.1 dB in the audio fundamental, 1 dB in a harmonic.
"""
import json
import math
import pathlib

from quasi_static import solve, solve_with_harmonics

document = json.loads(pathlib.Path(__file__).with_name('cases.json').read_text())
print(f"{'case':28} {'mean %':>9} {'tank %':>9} {'A1 dB':>9} {'A2 dB':>9} {'A3 dB':>9}   {'HD2 %':>7} {'HD3 %':>7} {'steady to':>9}   with RF harmonics: mean %, A1, A2, A3 dB")
wrong = 0
for case in document['cases']:
    output, amplitude, bins = solve(case)
    result = case['result']
    mean = 100 * (bins[0].real / result['meanOutput'] - 1)
    tank = 100 * (amplitude.mean() / result['meanTankAmplitude'] - 1)
    decibels = [20 * math.log10(abs(bins[k]) / result['audio'][k - 1]['amplitude']) for k in (1, 2, 3)]
    share = [100 * a['amplitude'] / result['audio'][0]['amplitude'] for a in result['audio'][1:]]
    print(f"{case['name']:28} {mean:9.4f} {tank:9.4f} " + ' '.join(f'{d:9.4f}' for d in decibels)
          + f"   {share[0]:7.3f} {share[1]:7.3f} {case['integration']['changeFromPeriodBefore']:9.1e}" + ('' if case['describingFunctionHolds'] else '   not owed'))
    full = solve_with_harmonics(case)
    print(' ' * 94 + f"{100 * (full[0].real / result['meanOutput'] - 1):9.4f} "
          + ' '.join(f"{20 * math.log10(abs(full[k]) / result['audio'][k - 1]['amplitude']):9.4f}" for k in (1, 2, 3)), flush=True)
    wrong += case['describingFunctionHolds'] and (abs(mean) > 1 or abs(decibels[0]) > 0.1 or max(abs(decibels[1]), abs(decibels[2])) > 1)
for key in ('integrationError', 'quasiStaticError'):
    print(key, ' '.join(f'{v:.2e}' for v in document[key]['relative']))
raise SystemExit(1 if wrong else 0)
