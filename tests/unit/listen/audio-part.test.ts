import { describe, expect, test } from 'vitest';
import { C, type Complex, type PhonesDescription, phonesModel } from '#engine';
import { audioStepping } from '../../../src/engine/listen/audio-stepping.ts';
import { set } from '../chain/base-set.ts';

type Earpiece = PhonesDescription['earpiece'];
const piezo = set.phones;
const light: Earpiece = { ...piezo.earpiece, kind: 'magnetic', resistance: 60, inductance: 0.01 };
const magnetic: Earpiece = {
  ...light,
  resistance: 1800,
  inductance: 0.6,
  motional: { resistance: 9000, inductance: 0.35, capacitance: 60e-9 },
};
const transformer = {
  ratio: 8,
  primaryInductance: 60,
  primaryResistance: 900,
  secondaryResistance: 15,
  leakageInductance: 0.5,
  coreLoss: 400e3,
  capacitance: 150e-12,
};
const { load: _, ...withoutLoad } = piezo;
const descriptions: Record<string, PhonesDescription> = {
  'piezo on a resistor': piezo,
  'piezo on a choke': { ...withoutLoad, choke: { inductance: 40, resistance: 3000 } },
  'magnetic, with motion': { ...withoutLoad, bypass: 1e-9, earpiece: magnetic },
  'transformer to magnetic': { ...withoutLoad, transformer, earpiece: light },
  'blocked transformer to piezo': { ...piezo, blocking: 100e-9, transformer: { ...transformer, ratio: 0.5 } },
};

describe('rival: the audio half stepped from sample to sample, against its network in closed form', () => {
  for (const [name, description] of Object.entries(descriptions))
    test(name, () => {
      const model = phonesModel(description);
      const rate = 960_000;
      const a = audioStepping({ elements: model.elements, ports: [{ from: 'earth', to: 'output' }], output: 'earpiece' }, rate);
      for (const f of [2, 50, 300, 1000, 3300, 9000, 19000]) {
        const angle = (2 * Math.PI * f) / rate;
        const z = C.cis(-angle);
        let output: Complex = { re: a.within[0]!, im: 0 };
        let ear: Complex = { re: a.direct[0]!, im: 0 };
        for (let k = 0; k < a.modes; k++) {
          // Re of a complex mode under a real input: half the mode and half its conjugate
          for (const sign of k < a.realModes ? [0] : [1, -1]) {
            const part = (re: Float64Array, im: Float64Array): Complex => ({ re: re[k]!, im: (sign === 0 ? 0 : sign) * im[k]! });
            const share = sign === 0 ? 1 : 0.5;
            const y = C.div(C.mul(z, part(a.intoRe, a.intoIm)), C.sub(C.ONE, C.mul(z, part(a.decayRe, a.decayIm))));
            output = C.add(output, C.scale(C.mul(part(a.outRe, a.outIm), y), share));
            ear = C.add(ear, C.scale(C.mul(part(a.earRe, a.earIm), y), share));
          }
        }
        const exact = model.load(f);
        const heard = C.mul(exact, model.transfer(f));
        // a current that runs straight between samples falls short by sinc^2
        const sinc = angle === 0 ? 1 : Math.sin(angle / 2) / (angle / 2);
        expect(C.abs(C.sub(output, C.scale(exact, sinc * sinc))) / C.abs(exact), `${f} Hz`).toBeLessThan(1e-4 + 0.3 * angle * angle);
        expect(C.abs(C.sub(ear, C.scale(heard, sinc * sinc))) / C.abs(exact), `${f} Hz`).toBeLessThan(1e-4 + 0.3 * angle * angle);
      }
      // and a steady current
      expect(a.steady[0]! / model.load(0).re).toBeCloseTo(1, 6);
    });
});
