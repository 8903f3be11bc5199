import { detectorModel, EARTH, type Element, phonesModel, type SetDescription, tankModel } from '#engine';

/** A part of the engine's network that a drawing shows, and the nets its ends are on. */
export interface NetPart {
  readonly name: string;
  readonly a: string;
  readonly b: string;
}

/** Losses and strays in series with a part: they belong to it, and their two nodes are one for the eye. */
const IN_SERIES = /copper|^coil leads$|^radiation$|^wiring|^joints$|^capacitor contact$|^capacitor leads$|resistance$|^joint$|^emf$/;
/** Losses and strays across something: not drawn. */
const ACROSS =
  /dielectric$|^former$|^coil self-capacitance$|^stray capacitance$|^detector capacitance$|^core loss$|^winding capacitance$|insulation$|^earpiece/;

/**
 * The network that the engine computes with, stripped of what no circuit diagram shows: losses and strays. Names are the engine's; the detector hangs
 * between the tank's detector node and `output`, the earpiece between `earpiece` and earth.
 */
export function networkOfSet(set: SetDescription): readonly NetPart[] {
  const tank = tankModel(set.tank, set.aerial.kind === 'coil');
  const elements: Element[] = [
    ...tank.elements(1e6, 0.5 * tank.rotation),
    ...detectorModel(set.detector).elements(tank.detectorNode),
    ...phonesModel(set.phones).elements,
  ];
  // as the chain joins its source: the coil's own e.m.f. at its cold end, or the aerial's impedance with the e.m.f. behind it
  if (tank.aerialIsCoil) elements.push({ kind: 'voltage', name: 'emf', a: 'coil-cold', b: EARTH, re: 1, im: 0 });
  else elements.push({ kind: 'impedance', name: 'aerial', a: tank.aerialNode, b: EARTH, at: () => ({ re: 50, im: 0 }) });
  const pieces = elements.flatMap((e): NetPart[] =>
    e.kind === 'windings' ? e.windings.map(({ name, a, b }) => ({ name, a, b })) : [{ name: e.name, a: e.a, b: e.b }],
  );
  const one = new Map<string, string>();
  const find = (node: string): string => (one.has(node) ? find(one.get(node)!) : node);
  for (const p of pieces) {
    const [a, b] = [find(p.a), find(p.b)];
    if (IN_SERIES.test(p.name) && !ACROSS.test(p.name) && a !== b) {
      if (a === EARTH) one.set(b, a);
      else one.set(a, b);
    }
  }
  const shown = pieces.filter((p) => !IN_SERIES.test(p.name) && !ACROSS.test(p.name));
  shown.push({ name: 'detector', a: tank.detectorNode, b: 'output' }, { name: 'earpiece', a: 'earpiece', b: EARTH });
  return shown.map((p) => ({ name: p.name, a: find(p.a), b: find(p.b) }));
}
