import type { AerialDescription, OnWire, SpacePoint, WireGround, WireLoad, WireShape, WiresDescription } from '#engine';
import type { WiresForm } from '../forms/wires-form.ts';
import { GROUNDS } from './place.ts';

type Of<K extends WiresForm['shape']> = Extract<WiresForm, { shape: K }>;
type Shape<K extends WireShape['kind']> = Extract<WireShape, { kind: K }>;
type Described = Extract<AerialDescription, { kind: 'wires' }>;

/** Height of an aerial of which neither its own section nor a place says more [m]. */
const USUAL_HEIGHT = 1.5;

/**
 * The aerial for the engine: shapes as the solver knows them, what was left out filled in.
 *
 * @param siteHeight - of the place, if the file has one [m]
 */
export function assembleWires(form: WiresForm, siteHeight: number | undefined): Described {
  const { segments, feeder } = form;
  return {
    kind: 'wires',
    shape: shapeOf(form),
    // a free list has its own heights
    height: form.shape === 'free-list' ? 0 : (form.height ?? siteHeight ?? USUAL_HEIGHT),
    ground: groundOf(form),
    ...(segments !== undefined && { segments }),
    ...(feeder && { feeder }),
  };
}

function groundOf(form: WiresForm): WireGround {
  const { ground } = form;
  if (ground === undefined)
    return form.shape === 'rod' && form.against.kind === 'earth-wire' ? { kind: 'perfect' } : { kind: 'free-space' };
  if (ground === 'none') return { kind: 'free-space' };
  if (ground === 'perfect') return { kind: 'perfect' };
  return { kind: 'real', ...(typeof ground === 'string' ? GROUNDS[ground] : ground) };
}

function shapeOf(form: WiresForm): WireShape {
  switch (form.shape) {
    case 'rod': {
      const { length, diameter, metal, lean, against } = form;
      return { kind: 'rod', rod: { length, diameter, metal }, lean, against };
    }
    case 'dipole': {
      const { length, diameter, metal, includedAngle, bend, slope } = form;
      return { kind: 'dipole', length, diameter, metal, orientation: orientationOf(form.orientation), includedAngle, bend, slope };
    }
    case 'folded-dipole': {
      const { length, diameter, secondDiameter = diameter, spacing, metal } = form;
      return { kind: 'folded-dipole', length, diameter, secondDiameter, spacing, metal, orientation: orientationOf(form.orientation) };
    }
    case 'beam':
      return beamOf(form);
    case 'round-loop': {
      const { diameter, turns, wireDiameter, metal, sides, axis } = form;
      const windingLength = form.windingLength ?? (turns === 1 ? 0 : 2 * turns * wireDiameter);
      return {
        kind: 'round-loop',
        diameter,
        turns,
        windingLength,
        wireDiameter,
        metal,
        sides,
        axis: axis === 'vertical' ? { kind: 'vertical' } : axis,
      };
    }
    case 'square-loop': {
      const { side, diameter, metal, bearing, fedAt } = form;
      return { kind: 'square-loop', side, diameter, metal, bearing, fedAt };
    }
    case 'free-list':
      return {
        kind: 'free-list',
        wires: form.wires.map((w) => ({ ...w, from: pointOf(w.from), to: pointOf(w.to) })),
        feed: placeOf(form.feed),
        loads: form.loads.map((load) => ({ ...load, place: placeOf(load.place) }) as WireLoad),
      };
  }
}

const orientationOf = (given: Of<'dipole'>['orientation']) => (given === 'vertical' ? { kind: 'vertical' as const } : given);

/** The elements from the driven one outwards; the checks have made sure that it is there. */
function beamOf({ elements, driven, drivenElement, diameter, metal, polarisation, bearing }: Of<'beam'>): WireShape {
  const fed = elements[driven - 1]!;
  const behind = driven === 2 ? elements[0]! : null;
  return {
    kind: 'beam',
    reflector: behind && { length: behind.length, behind: fed.position - behind.position },
    driven: { length: fed.length, element: drivenElement === 'straight' ? { kind: 'straight' } : drivenElement },
    directors: elements.slice(driven).map((e) => ({ length: e.length, ahead: e.position - fed.position })),
    diameter,
    metal,
    polarisation,
    bearing,
  };
}

type PointForm = Of<'free-list'>['wires'][number]['from'];

const pointOf = ([x, y, z]: PointForm): SpacePoint => ({ x, y, z });
const pointToForm = ({ x, y, z }: SpacePoint): PointForm => [x, y, z];
const placeOf = (place: Of<'free-list'>['feed']): OnWire => ('point' in place ? { point: pointOf(place.point) } : place);
const placeToForm = (place: OnWire): Of<'free-list'>['feed'] => ('point' in place ? { point: pointToForm(place.point) } : { ...place });

/** The aerial as a file gives it, with nothing left out. */
export function wiresToForm(description: WiresDescription): WiresForm {
  const { kind, shape, height, ground, ...rest } = description;
  const { kind: name, ...sizes } = shape;
  const below =
    ground.kind === 'real'
      ? { permittivity: ground.permittivity, conductivity: ground.conductivity }
      : ground.kind === 'perfect'
        ? 'perfect'
        : 'none';
  const common = { kind, shape: name, ground: below, ...rest };
  switch (shape.kind) {
    case 'rod':
      return { ...common, ...shape.rod, lean: shape.lean, against: shape.against, height } as WiresForm;
    case 'beam':
      return { ...common, ...beamToForm(shape), height } as WiresForm;
    case 'free-list':
      return {
        ...common,
        wires: shape.wires.map((w) => ({ ...w, from: pointToForm(w.from), to: pointToForm(w.to) })),
        feed: placeToForm(shape.feed),
        loads: shape.loads.map((load) => ({ ...load, place: placeToForm(load.place) })),
      } as WiresForm;
    default:
      return { ...common, ...sizes, height } as WiresForm;
  }
}

/** Places counted from the driven element: so they are read back to the last bit. */
function beamToForm({ reflector, driven, directors, ...rest }: Shape<'beam'>): Partial<Of<'beam'>> {
  const { kind: _, ...alike } = rest;
  return {
    ...alike,
    elements: [
      ...(reflector ? [{ length: reflector.length, position: -reflector.behind }] : []),
      { length: driven.length, position: 0 },
      ...directors.map((d) => ({ length: d.length, position: d.ahead })),
    ],
    driven: reflector ? 2 : 1,
    drivenElement: driven.element.kind === 'straight' ? 'straight' : driven.element,
  };
}
