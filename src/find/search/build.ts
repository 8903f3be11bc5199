import type { Coil, CoilGeometry, Coupling, PhonesDescription, SetDescription } from '#engine';
import { type Design, DIRECT, LINK, NONE, type RadioDesign, SERIES, TAP } from './design.ts';
import { pitchOf, type Space } from './space.ts';
import type { Load } from './stock.ts';
import { leadOf, linkCount, linkOf, windable, wiringOf } from './winding.ts';
import { JOINTS_SOLDERED, STRAYS } from './winding-rules.ts';

/** Whether a design can be built of what the drawer holds, by the rules of the bench; `Builder` makes only such sets. */
export function canBeBuilt(space: Space, d: Design): boolean {
  return radioCanBeBuilt(space, d) && sounds(space, d) && enoughCapacitors(space, d);
}

/** The same for aerial and coil alone, whatever the detector and the phones. */
export function radioCanBeBuilt(space: Space, d: RadioDesign): boolean {
  return turnsStand(d) && joins(space, d) && windable(space, d);
}

const turnsStand = (d: RadioDesign): boolean => d.halves > 2 || (d.halves === 2 && d.pitch === 0);

function joins({ stock, aerials }: Space, d: RadioDesign): boolean {
  const alone = aerials[d.aerial]!.description.kind === 'coil';
  if (alone !== (d.joint === NONE)) return false;
  const step = Math.max(1, Math.round(4 * stock.wires[d.wire]!.part.tapEvery));
  const solderable = (quarters: number): boolean => quarters > 0 && quarters < 2 * d.halves && quarters % step === 0;
  if (d.tap !== 0 && !solderable(d.tap)) return false;
  if (d.joint === TAP) return solderable(d.at);
  if (d.joint === LINK) return d.at < linkCount(stock);
  if (d.joint === SERIES) return d.at < stock.fixedCapacitors.length;
  return d.at === 0;
}

/** Before a piezo the direct current needs a way, by a resistor, a choke or the primary of a transformer; magnetic phones are a way themselves. */
function sounds({ stock }: Space, d: Design): boolean {
  const piezo = stock.earpieces[d.earpiece]!.part.kind === 'piezo';
  return piezo ? (d.transformer === 0) !== (d.load === 0) : d.load === 0;
}

function enoughCapacitors({ stock }: Space, d: Design): boolean {
  const used = [d.across, d.bypass, d.joint === SERIES ? d.at + 1 : 0].filter((k) => k > 0);
  return used.every((k) => used.filter((other) => other === k).length <= stock.fixedCapacitors[k - 1]!.count);
}

function wayOf(load: Load | undefined): Pick<PhonesDescription, 'load' | 'choke'> {
  if (!load) return {};
  return load.kind === 'resistor' ? { load: load.resistance } : { choke: { inductance: load.inductance, resistance: load.resistance } };
}

/** Coils kept at most: their models hang on the very objects. */
const KEPT = 20_000;

/** Makes sets of designs. Parts, aerials and coils that are the same are the same object, so that the engine makes each model once. */
export class Builder {
  readonly #space: Space;
  readonly #coils = new Map<string, Coil>();

  constructor(space: Space) {
    this.#space = space;
  }

  /** The set, of a design that can be built. */
  set(d: Design): SetDescription {
    const { stock, aerials } = this.#space;
    const coil = this.#coil(d);
    const capacitor = stock.capacitors[d.capacitor]!.part;
    const detectorCoupling: Coupling = d.tap === 0 ? { kind: 'direct' } : { kind: 'tap', turns: d.tap / 4 };
    const aerialCoupling = this.#joint(d);
    return {
      aerial: aerials[d.aerial]!.description,
      tank: {
        coil,
        capacitor:
          d.across === 0
            ? capacitor
            : { ...capacitor, parallel: (capacitor.parallel ?? 0) + stock.fixedCapacitors[d.across - 1]!.capacitance },
        wiring: { length: wiringOf(stock.formers[d.former]!.diameter), diameter: stock.wires[d.wire]!.part.wireDiameter },
        joints: JOINTS_SOLDERED,
        strayCapacitance: STRAYS,
        ...(aerialCoupling && { aerialCoupling }),
        detectorCoupling,
      },
      detector: stock.detectors[d.detector]!.part,
      phones: this.#phones(d),
    };
  }

  #joint(d: Design): Coupling | null {
    const { stock } = this.#space;
    switch (d.joint) {
      case DIRECT:
        return { kind: 'direct' };
      case TAP:
        return { kind: 'tap', turns: d.at / 4 };
      case LINK:
        return linkOf(stock, d);
      case SERIES:
        return { kind: 'series-capacitor', capacitance: stock.fixedCapacitors[d.at]!.capacitance };
      default:
        return null;
    }
  }

  #phones(d: Design): PhonesDescription {
    const { stock } = this.#space;
    return {
      bypass: d.bypass === 0 ? 0 : stock.fixedCapacitors[d.bypass - 1]!.capacitance,
      ...wayOf(stock.loads[d.load - 1]),
      ...(d.transformer > 0 && { transformer: stock.transformers[d.transformer - 1]!.part }),
      earpiece: stock.earpieces[d.earpiece]!.part,
    };
  }

  #coil(d: Design): Coil {
    const key = `${d.former} ${d.wire} ${d.halves} ${d.pitch}`;
    let coil = this.#coils.get(key);
    if (!coil) {
      if (this.#coils.size >= KEPT) this.#coils.clear();
      coil = this.#wound(d);
      this.#coils.set(key, coil);
    }
    return coil;
  }

  #wound(d: Design): CoilGeometry {
    const { stock } = this.#space;
    const { wireDiameter, metal, surfaceFactor } = stock.wires[d.wire]!.part;
    const { diameter, stays } = stock.formers[d.former]!;
    return {
      kind: 'geometry',
      turns: d.halves / 2,
      innerDiameter: diameter,
      wireDiameter,
      pitch: pitchOf(wireDiameter, d.pitch),
      metal,
      surfaceFactor,
      leadLength: leadOf(diameter),
      ...(stays && { former: stays }),
    };
  }
}
