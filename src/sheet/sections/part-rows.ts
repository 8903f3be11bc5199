import { DIAMETER, lengthText } from '#draw';
import type { Coupling, DetectorDescription, PhonesDescription, SetDescription, VariableCapacitor } from '#engine';
import type { UsedPart } from '#set-file';
import { formatFigure } from '#units';
import { degrees, farads, frequencyText, henries, ohms } from './say.ts';

/** A part: what it is for, and what it has to be. */
export interface PartRow {
  readonly name: string;
  readonly value: string;
}

const LAWS = {
  'capacitance-linear': 'capacitance even with the angle',
  'wavelength-linear': 'wavelength even with the angle',
  'frequency-linear': 'frequency even with the angle',
  logarithmic: 'frequency in equal ratios with the angle',
  table: 'law as measured',
} as const;

const share = (x: number): string => `${Number(x.toPrecision(3))}`;

/** Every part of the set but the aerial's and the coil's wire, with the values it was reckoned with. */
export function partRows(set: SetDescription, parts: readonly UsedPart[]): readonly PartRow[] {
  const { tank, detector, phones } = set;
  const title = (path: string): string => {
    const part = parts.find((p) => p.path === path);
    return part ? `${part.title}: ` : '';
  };
  return [
    ...capacitorRows(tank.capacitor, title('tank.capacitor')),
    ...couplingRows('aerial', tank.aerialCoupling),
    ...couplingRows('detector', tank.detectorCoupling),
    ...(tank.detectorReturn === undefined ? [] : [{ name: 'resistor from the detector to earth', value: ohms(tank.detectorReturn) }]),
    { name: 'detector', value: `${title('detector')}${detectorText(detector)}` },
    ...phonesRows(phones, title),
    {
      name: 'wiring of the tank',
      value: `${lengthText(tank.wiring.length)} in all, both ways together, ${DIAMETER} ${lengthText(tank.wiring.diameter)}; ${tank.joints.count} joints of ${ohms(tank.joints.resistance)} or better; strays reckoned with ${farads(tank.strayCapacitance)}`,
    },
  ];
}

function capacitorRows(c: VariableCapacitor, title: string): readonly PartRow[] {
  return [
    {
      name: 'tuning capacitor',
      value: `${title}${farads(c.minimum)} to ${farads(c.maximum)} over ${degrees(c.rotation)}, ${LAWS[c.law.kind]}; loss tangent ${share(c.lossTangent)}, contact ${ohms(c.contactResistance)}, leads ${henries(c.leadInductance)}`,
    },
    ...(c.series === undefined ? [] : [{ name: 'capacitor in series with it', value: farads(c.series) }]),
    ...(c.parallel === undefined ? [] : [{ name: 'capacitor across it', value: farads(c.parallel) }]),
  ];
}

const couplingRows = (role: string, c: Coupling | undefined): readonly PartRow[] =>
  c?.kind === 'series-capacitor' ? [{ name: `capacitor from the coil to the ${role}`, value: farads(c.capacitance) }] : [];

function detectorText(d: DetectorDescription): string {
  switch (d.kind) {
    case 'junction':
      return `junction, saturation current ${formatFigure(d.saturationCurrent, 'A', 3)}, ideality ${share(d.ideality)}, in series ${ohms(d.seriesResistance)}, across it ${farads(d.junctionCapacitance)}`;
    case 'channel':
      return `field-effect channel, threshold ${formatFigure(d.threshold, 'V', 3)}, factor ${formatFigure(d.transconductanceFactor, 'A/V^2', 3)}, slope factor ${share(d.slopeFactor)}, gate driven by ${share(d.gateDrive)} of the drain, gate bias ${formatFigure(d.gateBias, 'V', 3)}, gate ${farads(d.gateCapacitance)}, drain ${farads(d.drainCapacitance)}, in series ${ohms(d.seriesResistance)}`;
    case 'table':
      return `as measured at ${d.voltage.length} voltages, ${formatFigure(d.voltage[0]!, 'V', 3)} to ${formatFigure(d.voltage.at(-1)!, 'V', 3)}; ${farads(d.capacitance)}, in series ${ohms(d.seriesResistance)}`;
  }
}

function phonesRows(p: PhonesDescription, title: (path: string) => string): readonly PartRow[] {
  const { transformer: t, earpiece: e } = p;
  return [
    ...(p.bypass > 0 ? [{ name: "capacitor across the detector's output", value: farads(p.bypass) }] : []),
    ...(p.load === undefined ? [] : [{ name: "resistor across the detector's output", value: ohms(p.load) }]),
    ...(p.choke
      ? [{ name: "choke across the detector's output", value: `${henries(p.choke.inductance)}, ${ohms(p.choke.resistance)}` }]
      : []),
    ...(p.blocking === undefined ? [] : [{ name: 'capacitor in series with the phones', value: farads(p.blocking) }]),
    ...(t
      ? [
          {
            name: 'transformer',
            value: `${title('phones.transformer')}${share(t.ratio)} to 1 in turns, primary ${henries(t.primaryInductance)} and ${ohms(t.primaryResistance)}, secondary ${ohms(t.secondaryResistance)}; leakage ${henries(t.leakageInductance)}, core loss ${ohms(t.coreLoss)}, across it ${farads(t.capacitance)}`,
          },
        ]
      : []),
    {
      name: e.ears === 2 ? 'phones for both ears' : 'earpiece',
      value: `${e.name === '' ? '' : `${e.name}: `}${
        e.kind === 'piezo'
          ? `piezo, ${farads(e.capacitance)}, loss tangent ${share(e.lossTangent)}, leak ${ohms(e.leakResistance)}`
          : `magnetic, ${ohms(e.resistance)} and ${henries(e.inductance)}${e.motional ? `, moving part ${ohms(e.motional.resistance)}, ${henries(e.motional.inductance)}, ${farads(e.motional.capacitance)}` : ''}`
      }; ${loudnessText(e)}`,
    },
  ];
}

/** Loudness where speech has most to say. */
function loudnessText(e: PhonesDescription['earpiece']): string {
  const at = e.sensitivity.reduce((a, b) => (Math.abs(Math.log(b.frequency / 1000)) < Math.abs(Math.log(a.frequency / 1000)) ? b : a));
  return `${share(at.level)} dB SPL for ${e.sensitivityAt} at ${frequencyText(at.frequency)}`;
}
