import { type Figure, term } from '../figure.ts';
import type { Heard, StationReport } from './report.ts';

/** Figures of the chain itself for one station: the dial, sharpness, harmonics, neighbours; the ladder's own come with the ladder. */
export function chainFigures(r: StationReport): readonly Figure[] {
  if (!r.heard || 'missing' in r.dial) {
    const missing = 'missing' in r.dial ? r.dial.missing : null;
    return [
      {
        name: 'dial.missing',
        label: 'capacitance by which the dial misses the station',
        value: missing,
        unit: 'F',
        method: 'susceptance at the end of the dial',
        working: {
          formula: 'C = -B / w at the nearer end; positive: too little, negative: too much',
          terms: [term('f', 'carrier', r.signal.received.station.frequency, 'Hz')],
          source: 'network by nodes',
        },
      },
    ];
  }
  return [...dialFigures(r, r.heard), ...sharpnessFigures(r.heard, r.signal.received.station.frequency), ...soundFigures(r.heard)];
}

function dialFigures(r: StationReport, h: Heard): Figure[] {
  if ('missing' in r.dial) return [];
  const { resonance, points } = r.dial;
  const figures: Figure[] = [
    {
      name: 'dial.resonance',
      label: 'dial angle at resonance, from least capacitance',
      value: resonance.angle,
      unit: 'rad',
      method: 'network by nodes',
      working: {
        formula: 'Im Y(top of the tank) = 0 at the carrier',
        terms: [term('G', 'conductance there', resonance.conductance, 'S')],
        source: 'nodal analysis, detector at rest',
      },
    },
    {
      name: 'dial.halfWidth',
      label: 'turn of the dial for half the bandwidth',
      value: resonance.halfWidth,
      unit: 'rad',
      method: 'network by nodes',
      working: {
        formula: 'x = 1: dB/dangle * turn = G',
        terms: [term('G', 'conductance at the top of the tank', resonance.conductance, 'S')],
        source: 'definition of x = 2 Q df / f0',
      },
    },
  ];
  for (const p of points)
    figures.push(
      {
        name: `dial.${p.side}.angle`,
        label: `dial angle, tank ${p.side} the station`,
        value: p.angle,
        unit: 'rad',
        method: 'greatest audio of the rated tone',
        working: {
          formula: 'max over angle of the fundamental at the earpiece',
          terms: [term('x', 'detuning in half bandwidths', p.x, '1'), term('V', 'audio there', p.audio, 'V rms')],
          source: 'golden section over the harmonic balance; square law alone would give x = 0.577, linear law 0.707',
        },
      },
      {
        name: `dial.${p.side}.audio`,
        label: `audio at the earpiece, tank ${p.side} the station`,
        value: p.audio,
        unit: 'V rms',
        method: 'harmonic balance',
        working: {
          formula: 'v = z * i(v)',
          terms: [term('x', 'detuning in half bandwidths', p.x, '1'), term('f', 'tone', h.evaluation.rated.frequency, 'Hz')],
          source: 'harmonic balance, quasi-static in the tank',
        },
      },
    );
  return figures;
}

function sharpnessFigures(h: Heard, carrier: number): Figure[] {
  const s = h.sharpness;
  const source = 'natural frequencies of the network: eigenvalues of (G + s C)';
  const make = (name: string, label: string, value: number | null, unit: string, formula: string): Figure => ({
    name: `tank.${name}`,
    label,
    value,
    unit,
    method: 'natural frequency',
    working: {
      formula,
      terms: s ? [term('f', 'resonance of the whole', s.frequency, 'Hz'), term('Q_L', 'loaded Q', s.loadedQ, '1')] : [],
      source,
    },
  });
  return [
    make('loadedQ', 'loaded Q, aerial and detector joined', s?.loadedQ ?? null, '1', 'Q = |Im s| / (2 |Re s|)'),
    make(
      'detuning',
      'detuning from the station in loaded half bandwidths, x',
      s ? (2 * s.loadedQ * (s.frequency - carrier)) / carrier : null,
      '1',
      'x = 2 Q_L (f - f0) / f0; steepest at 0.577 in square law, 0.707 in linear law',
    ),
    make('bandwidth', 'bandwidth between the half-power points', s?.bandwidth ?? null, 'Hz', 'B = f / Q_L'),
  ];
}

function soundFigures(h: Heard): Figure[] {
  const e = h.evaluation;
  const pure = (name: string, label: string, value: number, unit: string, formula: string): Figure => ({
    name: `sound.${name}`,
    label,
    value,
    unit,
    method: 'harmonic balance',
    working: {
      formula,
      terms: [
        term('A', 'radio amplitude across the detector at rest', e.rest.amplitude, 'V peak'),
        term('V0', 'steady output of the detector', e.rated.meanOutput, 'V'),
        term('m', 'swing of the rated tone', e.rated.swing, e.rated.swing > 2 ? 'Hz' : '1'),
      ],
      source: 'harmonic balance over 16 instants of the tone',
    },
  });
  return [
    pure('meanOutput', 'steady voltage at the detector output', e.rated.meanOutput, 'V', 'mean of v over the tone'),
    pure('secondHarmonic', 'second harmonic, rated tone', e.rated.secondHarmonic, '1', 'V2 / V1 at the earpiece'),
    pure('thirdHarmonic', 'third harmonic, rated tone', e.rated.thirdHarmonic, '1', 'V3 / V1 at the earpiece'),
    pure('secondHarmonicAverage', 'second harmonic, tone with the power of programme', e.average.secondHarmonic, '1', 'V2 / V1'),
    pure('thirdHarmonicAverage', 'third harmonic, tone with the power of programme', e.average.thirdHarmonic, '1', 'V3 / V1'),
    pure('sinad', 'signal over noise and distortion, rated tone', e.sinad, 'dB', '(S + N + D) / (N + D) at the earpiece'),
    ...e.leaks.map((l) => ({
      ...pure(
        `neighbour.${l.station}`,
        `programme of ${l.station} beside it`,
        l.programme,
        'dB',
        'd<i>/d(swing) of either station, both balanced with the detector',
      ),
      method: 'two carriers at once, averaged over their beat',
    })),
  ];
}
