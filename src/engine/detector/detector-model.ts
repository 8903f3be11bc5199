import { EARTH, type Element, type Node } from '../circuit/elements.ts';
import { GivenError } from '../given-error.ts';
import { type AverageGrid, channelGrid, junctionGrid, measuredGrid } from './average-grid.ts';
import { ChannelLaw } from './channel-law.ts';
import { checkDetector } from './check-description.ts';
import { type CycleAverages, REST_QUARTER_BEND, REST_SLOPE, RESTS, SmoothAverage } from './cycle-average.ts';
import type { DetectorDescription } from './description.ts';
import { JunctionLaw } from './junction-law.ts';
import { MeasuredLaw } from './measured-law.ts';
import type { DescribingFunction, DetectorModel, DetectorNumbers } from './model.ts';
import { saturationCurrentAt } from './saturation-current.ts';
import { SeriesJunctionLaw } from './series-junction-law.ts';
import type { SmallSignal } from './small-signal.ts';
import type { SmoothLaw } from './smooth-law.ts';
import { TabulatedAverage } from './tabulated-average.ts';
import { thermalVoltage } from './thermal-voltage.ts';

type Junction = Extract<DetectorDescription, { kind: 'junction' }>;
type ChannelDescription = Extract<DetectorDescription, { kind: 'channel' }>;
type Table = Extract<DetectorDescription, { kind: 'table' }>;

/** A junction with less current than this at its temperature conducts nothing that could be told from nothing. */
const LEAST_SATURATION = 1e-30;
/** Forward voltage at which the junction between a channel and its body begins to conduct [V], silicon. */
const BODY_VOLTAGE = 0.5;
/** Reverse voltage from which breakdown is worth a remark [V]: common practice, no source; junctions made for rectifying stand ten times that. */
const REVERSE_VOLTAGE = 5;
/** Distance from the nominal temperature at which a saturation current that is not scaled is worth a remark [K]. */
const UNSCALED = 5;
/** Steps of a table about 0 V above which its curvature there is poorly known [V]: at 15 mV a spline misses it by some 3 %. */
const COARSE_STEP = 0.015;

/** A search evaluates many sets around one detector: its table is built once and kept as long as its description lives. */
const MADE = new WeakMap<DetectorDescription, DetectorModel>();

/**
 * The detector as a describing function with its linear surroundings.
 *
 * @returns the same model for the same description object
 * @throws GivenError where the description cannot be
 */
export function detectorModel(description: DetectorDescription): DetectorModel {
  let model = MADE.get(description);
  if (!model) {
    model = make(description);
    MADE.set(description, model);
  }
  return model;
}

function make(description: DetectorDescription): DetectorModel {
  checkDetector(description);
  if (description.kind === 'junction') return junctionModel(description);
  if (description.kind === 'channel') return channelModel(description);
  return tableModel(description);
}

function junctionModel(d: Junction): DetectorModel {
  const slope = d.ideality * thermalVoltage(d.temperature);
  const saturation = saturationCurrentAt(d, d.temperature);
  if (!(saturation >= LEAST_SATURATION && saturation <= 1e3))
    throw new GivenError(
      'detector.temperature',
      `${d.temperature} K`,
      `the saturation current would be ${saturation} A there`,
      'Give a temperature nearer to the one at which the saturation current holds, or check the barrier.',
    );
  const exact = d.seriesResistance === 0;
  const series = exact ? null : new SeriesJunctionLaw(saturation, slope, d.seriesResistance);
  const junctionResistance = slope / saturation;
  const share = junctionResistance / (junctionResistance + d.seriesResistance);
  return assemble(
    d,
    series ? tabulated(series, junctionGrid(series)) : new JunctionLaw(saturation, slope),
    {
      method: exact ? 'modified Bessel functions' : 'cycle average with series resistance, tabulated',
      source: 'K. K. Clarke, D. T. Hess, Communication Circuits (1971), ch. 4; H. C. Torrey, C. A. Whitmer, Crystal Rectifiers (1948)',
      weak: { resistance: junctionResistance + d.seriesResistance, currentSensitivity: (share * share) / (2 * slope) },
      capacitance: d.junctionCapacitance,
      capacitanceResistance: d.seriesResistance,
      saturationCurrent: saturation,
    },
    d.energyGap === undefined && Math.abs(d.temperature - d.nominalTemperature) > UNSCALED
      ? [`no barrier is given, so the saturation current of ${d.nominalTemperature} K is used at ${d.temperature} K`]
      : [],
    (amplitude, output) =>
      amplitude + output > REVERSE_VOLTAGE
        ? `the swing passes ${REVERSE_VOLTAGE} V in reverse, where small Schottky junctions begin to break down (common practice, no source): breakdown is not in the law`
        : null,
  );
}

function channelModel(d: ChannelDescription): DetectorModel {
  const law = new ChannelLaw(d, thermalVoltage(d.temperature));
  const weak = weakSignal(new SmoothAverage(law));
  return assemble(
    d,
    tabulated(law, channelGrid(law, d)),
    {
      method: 'channel from weak to strong inversion, cycle average, tabulated',
      source:
        'C. C. Enz, F. Krummenacher, E. A. Vittoz, Analog Integr. Circuits Signal Process. 8 (1995) 83; M. Dyakonov, M. Shur, IEEE Trans. ED-43 (1996) 380',
      weak,
      capacitance: d.drainCapacitance + d.gateDrive * d.gateDrive * d.gateCapacitance,
      capacitanceResistance: d.seriesResistance,
      saturationCurrent: null,
    },
    [
      ...(d.gateDrive < 0
        ? ['gate against the drain: with its output held below what it makes for itself the channel returns radio power']
        : []),
      ...(Math.abs(d.gateDrive - 0.5) < 0.05 ? ['with half the RF on the gate a channel hardly rectifies'] : []),
      ...(weak.resistance > 1e9 ? ['the channel is shut at this gate bias'] : []),
    ],
    (amplitude, output) =>
      amplitude + Math.abs(output) > BODY_VOLTAGE
        ? `the swing across the channel passes ${BODY_VOLTAGE} V: the junction between channel and body, which is not in the law, may conduct`
        : null,
  );
}

function tableModel(d: Table): DetectorModel {
  const law = new MeasuredLaw(d.voltage, d.current);
  const scale = thermalVoltage(d.temperature);
  const zero = law.voltage.indexOf(0);
  const spacing = Math.max(law.voltage[zero + 1]!, -law.voltage[zero - 1]!);
  const low = law.voltage[0]!;
  const high = law.voltage.at(-1)!;
  const lookUp = new TabulatedAverage(law, scale, measuredGrid(law, scale, spacing));
  return assemble(
    d,
    { at: (a, v, out) => lookUp.at(a, v, out), current: (v) => law.current(v) },
    {
      method: 'measured law, monotone cubic, cycle average in closed form, tabulated',
      source: 'measured by the user',
      weak: weakSignal(law),
      capacitance: d.capacitance,
      capacitanceResistance: d.seriesResistance,
      saturationCurrent: null,
    },
    spacing > COARSE_STEP
      ? [
          `the table steps by ${Math.round(spacing * 1000)} mV at 0 V: too coarse to know the curvature there, and with it the answer to weak signals, to better than some per cent`,
        ]
      : [],
    (amplitude, output) =>
      amplitude - output > high || amplitude + output > -low
        ? `the swing leaves the measured law (${low} V to ${high} V), which goes on straight`
        : null,
  );
}

/** A smooth law behind its look-up. */
function tabulated(law: SmoothLaw, grid: AverageGrid): DescribingFunction {
  const average = new TabulatedAverage(new SmoothAverage(law), law.outputScale, grid);
  return { at: (a, v, out) => average.at(a, v, out), current: (v, output) => law.current(v, output) };
}

function weakSignal(averages: CycleAverages): SmallSignal {
  const rest = new Float64Array(RESTS);
  averages.rest(0, rest);
  const slope = rest[REST_SLOPE]!;
  return { resistance: 1 / slope, currentSensitivity: (2 * rest[REST_QUARTER_BEND]!) / slope };
}

function assemble(
  description: DetectorDescription,
  law: DescribingFunction,
  numbers: DetectorNumbers,
  remarks: readonly string[],
  remarkAt: DetectorModel['remarkAt'],
): DetectorModel {
  return {
    description,
    numbers,
    method: numbers.method,
    source: numbers.source,
    law,
    elements: (port) => surroundings(port, numbers.capacitance, numbers.capacitanceResistance),
    zeroBiasResistance: numbers.weak.resistance,
    currentSensitivity: numbers.weak.currentSensitivity,
    remarks,
    remarkAt,
  };
}

/** Capacitance with its series resistance from the RF port to earth: the output is earth for the RF by its bypass. */
function surroundings(port: Node, capacitance: number, resistance: number): readonly Element[] {
  if (capacitance === 0) return [];
  const inside = resistance > 0 ? 'detector inside' : port;
  const elements: Element[] = [{ kind: 'capacitor', name: 'detector capacitance', a: inside, b: EARTH, capacitance }];
  if (resistance > 0) elements.push({ kind: 'resistor', name: 'detector resistance', a: port, b: inside, resistance });
  return elements;
}
