import { GivenError } from '../given-error.ts';
import type { Earpiece, PhonesDescription, Transformer } from './description.ts';

/** @throws GivenError if the description holds something that cannot be built */
export function checkPhonesDescription(d: PhonesDescription): void {
  notBelowZero('phones.bypass', d.bypass, 'F');
  if (d.load !== undefined) aboveZero('phones.load', d.load, 'ohm');
  if (d.blocking !== undefined) aboveZero('phones.blocking', d.blocking, 'F');
  if (d.choke) {
    aboveZero('phones.choke.inductance', d.choke.inductance, 'H');
    aboveZero('phones.choke.resistance', d.choke.resistance, 'ohm');
  }
  if (d.transformer) checkTransformer(d.transformer);
  checkEarpiece(d.earpiece);
}

function checkTransformer(t: Transformer): void {
  aboveZero('phones.transformer.ratio', t.ratio, '');
  aboveZero('phones.transformer.primaryInductance', t.primaryInductance, 'H');
  aboveZero('phones.transformer.primaryResistance', t.primaryResistance, 'ohm');
  aboveZero('phones.transformer.secondaryResistance', t.secondaryResistance, 'ohm');
  aboveZero('phones.transformer.leakageInductance', t.leakageInductance, 'H');
  aboveZero('phones.transformer.coreLoss', t.coreLoss, 'ohm');
  notBelowZero('phones.transformer.capacitance', t.capacitance, 'F');
  if (t.leakageInductance >= t.primaryInductance)
    throw new GivenError(
      'phones.transformer.leakageInductance',
      `${t.leakageInductance} H`,
      `it is not below the primary inductance of ${t.primaryInductance} H, so that nothing would be coupled`,
      'Leakage is measured at the primary with the secondary shorted; give a smaller value.',
    );
}

function checkEarpiece(e: Earpiece): void {
  const path = 'phones.earpiece';
  if (e.kind === 'piezo') {
    aboveZero(`${path}.capacitance`, e.capacitance, 'F');
    notBelowZero(`${path}.lossTangent`, e.lossTangent, '');
    aboveZero(`${path}.leakResistance`, e.leakResistance, 'ohm');
  } else {
    aboveZero(`${path}.resistance`, e.resistance, 'ohm');
    notBelowZero(`${path}.inductance`, e.inductance, 'H');
    if (e.motional) {
      aboveZero(`${path}.motional.resistance`, e.motional.resistance, 'ohm');
      aboveZero(`${path}.motional.inductance`, e.motional.inductance, 'H');
      aboveZero(`${path}.motional.capacitance`, e.motional.capacitance, 'F');
    }
  }
  notBelowZero(`${path}.sensitivitySpread`, e.sensitivitySpread, 'dB');
  if (e.sensitivity.length === 0)
    throw new GivenError(
      `${path}.sensitivity`,
      'empty',
      'nothing says how loud the earpiece is',
      'Give at least one point: a frequency and a level.',
    );
  e.sensitivity.forEach((point, i) => {
    const at = `${path}.sensitivity[${i}]`;
    aboveZero(`${at}.frequency`, point.frequency, 'Hz');
    if (!(point.level >= -50 && point.level <= 200))
      throw new GivenError(
        `${at}.level`,
        `${point.level} dB`,
        'no earpiece is outside -50 to 200 dB',
        'Give the sound pressure level in dB SPL.',
      );
    const before = e.sensitivity[i - 1];
    if (before && !(point.frequency > before.frequency))
      throw new GivenError(
        `${at}.frequency`,
        `${point.frequency} Hz`,
        `it does not lie above the point before it, ${before.frequency} Hz`,
        'List the points from the lowest frequency to the highest.',
      );
  });
}

function aboveZero(path: string, value: number, unit: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    throw new GivenError(path, `${value} ${unit}`.trim(), 'it must be a finite number above zero', 'Give the measured or the usual value.');
}

function notBelowZero(path: string, value: number, unit: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new GivenError(
      path,
      `${value} ${unit}`.trim(),
      'it must be a finite number, zero or above',
      'Give the measured or the usual value.',
    );
}
