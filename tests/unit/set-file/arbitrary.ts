import fc from 'fast-check';
import type {
  AerialDescription,
  DetectorDescription,
  EarDescription,
  Earpiece,
  PhonesDescription,
  Place,
  Station,
  TankDescription,
} from '#engine';
import { LIBRARY } from '#parts';
import type { Drawer, SetFile } from '#set-file';

/**
 * Random valid sets at random valid places: every kind of every stage, over ranges that are wide and still could be built.
 *
 * Values are spread evenly by their logarithm where they run over decades. Nothing promises that a set hears anything.
 */

/** Evenly by the logarithm between two numbers of one sign; some in three digits, as people write, the others with every bit. */
const decades = (low: number, high: number): fc.Arbitrary<number> =>
  fc.tuple(fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }), fc.boolean()).map(([l, round]) => {
    const x = Math.min(high, Math.max(low, Math.exp(l)));
    return round ? Math.min(high, Math.max(low, Number(x.toPrecision(3)))) : x;
  });
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const turns = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: 4 * min, max: 4 * max }).map((q) => q / 4);
const bearing = fc.oneof(
  fc.integer({ min: 0, max: 359 }).map((d) => d * (Math.PI / 180)),
  between(-2 * Math.PI, 2 * Math.PI),
);
const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 });
const metal = fc.constantFrom('copper', 'brass', 'aluminium', 'steel', 'silver' as const);
/** A key that is there or not. */
const maybe = <K extends string, T>(key: K, value: fc.Arbitrary<T>): fc.Arbitrary<Partial<Record<K, T>>> =>
  fc.option(value, { nil: undefined }).map((v) => (v === undefined ? {} : { [key]: v }) as Partial<Record<K, T>>);
const merge = (...parts: fc.Arbitrary<object>[]): fc.Arbitrary<object> =>
  fc.tuple(...parts).map((all) => Object.assign({}, ...all) as object);
/** Distinct ascending numbers. */
const ascending = (value: fc.Arbitrary<number>, minLength: number, maxLength: number): fc.Arbitrary<number[]> =>
  fc.uniqueArray(value, { minLength, maxLength }).map((list) => list.sort((a, b) => a - b));

const coordinates = fc.record({ latitude: between(-1.5, 1.5), longitude: between(-Math.PI, Math.PI) });

/** A profile of the right length, with hills. */
const terrainOver = (distance: number): fc.Arbitrary<NonNullable<Station['terrain']>> =>
  fc.array(fc.record({ share: between(0.001, 0.999), height: between(-5, 800) }), { minLength: 0, maxLength: 8 }).map((inner) => {
    const points = [{ share: 0, height: 40 }, ...inner, { share: 1, height: 30 }].sort((a, b) => a.share - b.share);
    const kept = points.filter((p, i) => i === 0 || p.share > points[i - 1]!.share);
    // shares that differ in their last bit may make one distance
    const apart = kept.filter((p, i) => i === 0 || p.share * distance > kept[i - 1]!.share * distance);
    return { distance: apart.map((p) => p.share * distance), height: apart.map((p) => p.height) };
  });

const fmModulation = fc.record({
  kind: fc.constant('fm' as const),
  deviation: fc.constantFrom(50e3, 75e3),
  preEmphasis: fc.constantFrom(0, 50e-6, 75e-6),
  stereo: fc.boolean(),
});
const amModulation = fc.record({ kind: fc.constant('am' as const), depth: between(0.05, 1) });

const stationOf = (sharesCoordinates: boolean): fc.Arbitrary<Station> =>
  fc.tuple(fc.boolean(), decades(200, 80e3)).chain(([fm, distance]) => {
    const polar = fc.record({ distance: fc.constant(distance), bearing });
    // near enough to hear: the site's own coordinates are moved a little, once they are known
    const position = sharesCoordinates ? fc.oneof(polar, fc.record({ coordinates })) : polar;
    return merge(
      fc.record({
        name,
        frequency: fm ? between(65e6, 108e6) : between(150e3, 1.7e6),
        power: decades(1, 1e6),
        polarisation: fm ? fc.constantFrom('horizontal', 'vertical', 'mixed') : fc.constantFrom('vertical'),
        mastHeight: fm ? decades(5, 400) : fc.oneof(fc.constant(0), between(0, 100)),
        modulation: fm ? fmModulation : amModulation,
        programme: fc.constantFrom('speech', 'music'),
        position,
      }),
      maybe('effectiveHeight', between(10, 600)),
      maybe('measuredField', decades(1e-5, 10)),
    ).chain((station) => {
      const s = station as Station;
      return 'distance' in s.position ? merge(fc.constant(s), maybe('terrain', terrainOver(distance))) : fc.constant(s);
    }) as fc.Arbitrary<Station>;
  });

/** Moves masts given by coordinates to within a few kilometres of the site, so that every path can be computed. */
function gather(stations: readonly Station[], site: { latitude: number; longitude: number } | undefined): Station[] {
  return stations.map((s, i) => {
    if (!site || !('coordinates' in s.position)) return s;
    const offset = 0.0005 * (i + 1);
    return { ...s, position: { coordinates: { latitude: site.latitude + offset, longitude: site.longitude } } };
  });
}

export const arbitraryPlace: fc.Arbitrary<Place> = fc.option(coordinates, { nil: undefined }).chain((at) =>
  fc
    .record({
      name: fc.string({ maxLength: 20 }),
      site: merge(
        fc.record({
          height: between(0.5, 30),
          surroundings: fc.constantFrom('open', 'suburban', 'urban', 'dense-urban'),
          ground: fc.record({ permittivity: between(3, 80), conductivity: decades(1e-4, 5) }),
          radioNoise: fc.constantFrom('city', 'residential', 'rural', 'quiet-rural'),
        }),
        fc.constant(at ? { coordinates: at } : {}),
        maybe('building', fc.record({ kind: fc.constantFrom('traditional', 'thermally-efficient'), probability: between(0.05, 0.95) })),
      ),
      method: fc.constantFrom('auto', 'auto', 'free-space', 'smooth-earth'),
      stations: fc.uniqueArray(stationOf(at !== undefined), { minLength: 1, maxLength: 4, selector: (s) => s.name }),
    })
    .map((place) => ({ ...place, stations: gather(place.stations, at) }) as Place),
);

const orientation = fc.oneof(
  fc.constant({ kind: 'vertical' as const }),
  bearing.map((broadside) => ({ kind: 'horizontal' as const, broadside })),
);
const axis = fc.oneof(
  fc.constant({ kind: 'vertical' as const }),
  bearing.map((plane) => ({ kind: 'horizontal' as const, plane })),
);
const rod = { length: decades(0.2, 5), diameter: decades(0.5e-3, 20e-3), metal };
const earth = { length: decades(0.5, 20), diameter: decades(0.3e-3, 5e-3), earthResistance: decades(5, 2000) };

const separateAerial = fc.oneof(
  fc.tuple(ascending(decades(1e5, 1e9), 1, 4), fc.boolean(), orientation).chain(([frequencies, byGain, o]) =>
    merge(
      fc.record({
        kind: fc.constant('electrical'),
        impedance: fc.tuple(
          ...frequencies.map((frequency) =>
            fc.record({ frequency: fc.constant(frequency), resistance: decades(1, 1000), reactance: between(-1000, 1000) }),
          ),
        ),
        orientation: fc.constant(o),
        frontToBack: o.kind === 'vertical' ? fc.constant(0) : between(0, 30),
      }),
      byGain ? fc.record({ gain: between(-20, 12) }) : fc.record({ effectiveLength: decades(0.01, 5) }),
    ),
  ),
  fc.record({ kind: fc.constant('dipole'), ...rod, orientation }),
  fc.record({
    kind: fc.constant('whip'),
    ...rod,
    counterpoise: fc.oneof(
      fc.constant({ kind: 'plane' }),
      fc.record({ kind: fc.constant('drop-wire'), length: decades(0.2, 5), diameter: decades(0.3e-3, 5e-3) }),
      fc.record({ kind: fc.constant('set'), size: decades(0.03, 1) }),
      fc.record({ kind: fc.constant('earth-wire'), ...earth }),
    ),
  }),
  fc.tuple(fc.integer({ min: 1, max: 20 }), decades(0.05, 1), decades(0.3e-3, 8e-3)).chain(([n, diameter, wireDiameter]) =>
    fc.record({
      kind: fc.constant('loop'),
      diameter: fc.constant(diameter),
      turns: fc.constant(n),
      wireDiameter: fc.constant(wireDiameter),
      windingLength: n === 1 ? fc.constant(wireDiameter) : between(1.1, 6).map((s) => s * n * wireDiameter),
      metal,
      axis,
    }),
  ),
  fc.record({
    kind: fc.constant('wire-to-earth'),
    horizontal: fc.oneof(fc.constant(0), decades(1, 60)),
    vertical: decades(1, 15),
    diameter: decades(0.3e-3, 3e-3),
    earthResistance: decades(5, 500),
  }),
);
const conductor = { length: decades(0.3, 3), diameter: decades(1e-3, 10e-3), metal };
const thin = { length: decades(0.3, 3), diameter: decades(0.5e-3, 3e-3), metal };
const ahead = (distance: fc.Arbitrary<number>, count: number) =>
  fc
    .tuple(...Array.from({ length: count }, () => fc.record({ length: decades(0.5, 2), step: distance })))
    .map((list) => list.map(({ length }, i) => ({ length, ahead: list.slice(0, i + 1).reduce((sum, e) => sum + e.step, 0) })));
const rodAlone = fc.record({
  kind: fc.constant('rod'),
  rod: fc.record(conductor),
  lean: fc.record({ angle: between(-1, 1), bearing }),
  against: fc.oneof(
    fc.record({ kind: fc.constant('drop-wire'), ...thin }),
    fc.record({ kind: fc.constant('box'), width: decades(0.05, 0.5), depth: decades(0.05, 0.5), height: decades(0.05, 0.5), metal }),
    fc.record({ kind: fc.constant('radials'), count: fc.integer({ min: 1, max: 4 }), droop: between(0, 1), ...thin }),
  ),
});
const otherShape = fc.oneof(
  orientation.chain((o) =>
    fc.record({
      kind: fc.constant('dipole'),
      ...conductor,
      orientation: fc.constant(o),
      includedAngle: fc.oneof(fc.constant(Math.PI), between(0.5, Math.PI)),
      bend: fc.constantFrom('down', 'forward'),
      slope: o.kind === 'vertical' ? fc.constant(0) : between(-0.5, 0.5),
    }),
  ),
  fc.record({
    kind: fc.constant('folded-dipole'),
    length: decades(0.5, 4),
    diameter: decades(1e-3, 6e-3),
    secondDiameter: decades(1e-3, 6e-3),
    spacing: between(0.03, 0.1),
    metal,
    orientation,
  }),
  fc.tuple(fc.boolean(), fc.integer({ min: 0, max: 3 }), between(0.2, 1)).chain(([withReflector, directors, step]) =>
    fc.record({
      kind: fc.constant('beam'),
      reflector: withReflector ? fc.record({ length: decades(0.5, 2), behind: between(0.2, 1) }) : fc.constant(null),
      driven: fc.record({
        length: decades(0.5, 2),
        element: fc.oneof(fc.constant({ kind: 'straight' }), fc.record({ kind: fc.constant('folded'), spacing: between(0.03, 0.1) })),
      }),
      directors: ahead(fc.constant(step), directors),
      diameter: decades(2e-3, 10e-3),
      metal,
      polarisation: fc.constantFrom('horizontal', 'vertical'),
      bearing,
    }),
  ),
  fc.tuple(fc.integer({ min: 1, max: 3 }), decades(0.5e-3, 2e-3), between(2, 5)).chain(([n, wireDiameter, pitch]) =>
    fc.record({
      kind: fc.constant('round-loop'),
      diameter: decades(0.1, 1),
      turns: fc.constant(n),
      windingLength: fc.constant(n === 1 ? 0 : n * pitch * wireDiameter),
      wireDiameter: fc.constant(wireDiameter),
      metal,
      sides: fc.integer({ min: 6, max: 12 }),
      axis,
    }),
  ),
  fc.record({
    kind: fc.constant('square-loop'),
    side: decades(0.1, 1),
    diameter: decades(1e-3, 5e-3),
    metal,
    bearing,
    fedAt: fc.constantFrom('bottom', 'side'),
  }),
);
/** Shapes that can stand on ground as well, given six metres of height. */
const wireShape = fc.oneof({ weight: 2, arbitrary: rodAlone }, { weight: 5, arbitrary: otherShape });
const ground = fc.oneof(
  fc.constant({ kind: 'perfect' }),
  fc.record({ kind: fc.constant('real'), permittivity: between(1, 80), conductivity: decades(1e-4, 5) }),
);
/** A wire that is fed and one beside it with a part in it, in the open. */
const freeList = fc
  .record({ length: decades(0.5, 3), beside: decades(0.1, 2), up: between(-5, 5), diameter: decades(1e-3, 5e-3), byPoint: fc.boolean() })
  .chain(({ length, beside, up, diameter, byPoint }) =>
    fc.record({
      kind: fc.constant('free-list'),
      wires: fc.tuple(
        ...[0, beside].map((y) =>
          fc.record({
            from: fc.constant({ x: 0, y, z: up }),
            to: fc.constant({ x: length, y, z: up }),
            diameter: fc.constant(diameter),
            metal: fc.constantFrom('copper', 'lossless'),
          }),
        ),
      ),
      feed: byPoint ? fc.constant({ point: { x: length / 4, y: 0, z: up } }) : fc.record({ wire: fc.constant(0), at: between(0.2, 0.8) }),
      loads: fc.array(
        merge(
          fc.constant({ place: { wire: 1, at: 0.25 } }),
          fc.oneof(
            fc.record({ kind: fc.constant('impedance'), resistance: decades(1, 1000), reactance: between(-500, 500) }),
            merge(
              fc.record({ kind: fc.constantFrom('series', 'parallel'), resistance: decades(1, 1000) }),
              maybe('inductance', decades(1e-9, 1e-6)),
              maybe('capacitance', decades(1e-12, 1e-9)),
            ),
          ),
        ),
        { maxLength: 1 },
      ),
    }),
  );
const wires = fc
  .oneof(
    {
      weight: 5,
      arbitrary: fc.record({
        kind: fc.constant('wires'),
        shape: wireShape,
        height: between(0, 20),
        ground: fc.constant({ kind: 'free-space' }),
      }),
    },
    { weight: 2, arbitrary: fc.record({ kind: fc.constant('wires'), shape: wireShape, height: between(6, 20), ground }) },
    {
      weight: 1,
      arbitrary: fc.record({
        kind: fc.constant('wires'),
        shape: freeList,
        height: fc.constant(0),
        ground: fc.constant({ kind: 'free-space' }),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.tuple(decades(1, 5), between(1, 1.5)).chain(([height, stretch]) =>
        fc.record({
          kind: fc.constant('wires'),
          shape: fc.record({
            kind: fc.constant('rod'),
            rod: fc.record(conductor),
            lean: fc.record({ angle: between(-1, 1), bearing }),
            against: fc.record({
              kind: fc.constant('earth-wire'),
              length: fc.constant(height * stretch),
              diameter: decades(0.5e-3, 3e-3),
              metal,
              earthResistance: decades(5, 2000),
            }),
          }),
          height: fc.constant(height),
          ground: fc.constant({ kind: 'perfect' }),
        }),
      ),
    },
  )
  .chain((aerial) => merge(fc.constant(aerial), maybe('segments', fc.integer({ min: 60, max: 100 }))));
const feeder = fc.record({
  length: between(0, 30),
  impedance: between(50, 300),
  velocityFactor: between(0.6, 1),
  loss: between(0, 0.3),
  lossFrequency: decades(1e6, 3e8),
});
export const arbitraryAerial = fc.oneof(
  { weight: 5, arbitrary: merge(separateAerial, maybe('feeder', feeder)) },
  { weight: 3, arbitrary: merge(wires, maybe('feeder', feeder)) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('coil'), axis }) },
) as fc.Arbitrary<AerialDescription>;

/** A winding that can be wound: the wire bends around the former, and turns lie side by side. */
const winding = (mostTurns: number) =>
  fc
    .tuple(turns(1, mostTurns), decades(3e-3, 0.1), decades(0.2e-3, 3e-3), between(1.1, 5))
    .map(([n, innerDiameter, wireDiameter, spacing]) => ({
      turns: n,
      innerDiameter,
      wireDiameter: Math.min(wireDiameter, innerDiameter / 2),
      pitch: spacing * Math.min(wireDiameter, innerDiameter / 2),
    }));
const geometry = merge(
  winding(12).map((w) => ({ kind: 'geometry', ...w })),
  fc.record({ metal, surfaceFactor: between(1, 2), leadLength: between(0, 0.05) }),
  maybe('former', fc.record({ permittivity: between(1, 6), lossTangent: between(0, 0.05) })),
) as fc.Arbitrary<Extract<TankDescription['coil'], { kind: 'geometry' }>>;
const electricalCoil = fc.record({
  kind: fc.constant('electrical' as const),
  inductance: decades(20e-9, 500e-6),
  q: decades(20, 600),
  frequency: decades(5e5, 2e8),
  selfCapacitance: decades(0.1e-12, 10e-12),
  turns: turns(1, 100),
  tapCoupling: between(0.1, 0.95),
});
const law = fc.oneof(
  fc.constantFrom('capacitance-linear', 'wavelength-linear', 'frequency-linear', 'logarithmic').map((kind) => ({ kind })),
);
const capacitor = fc.tuple(decades(1e-12, 30e-12), between(1.5, 30), decades(1, 6)).chain(([minimum, span, rotation]) =>
  merge(
    fc.record({
      minimum: fc.constant(minimum),
      maximum: fc.constant(minimum * span),
      rotation: fc.constant(rotation),
      law: fc.oneof(
        law,
        ascending(between(0, 1), 2, 6).map((shares) => ({
          kind: 'table',
          angle: shares.map((t) => t * rotation),
          capacitance: shares.map((t) => minimum * span ** t),
        })),
      ),
      lossTangent: decades(1e-5, 1e-2),
      contactResistance: decades(1e-3, 1),
      leadInductance: decades(0.5e-9, 30e-9),
    }),
    maybe('series', decades(5e-12, 1e-9)),
    maybe('parallel', decades(0.5e-12, 100e-12)),
  ),
);
const couplingTo = (coil: TankDescription['coil'], withLink: boolean) =>
  fc.oneof(
    fc.constant({ kind: 'direct' as const }),
    fc.integer({ min: 1, max: 8 }).map((eighths) => ({ kind: 'tap' as const, turns: (eighths / 8) * coil.turns })),
    decades(0.5e-12, 50e-12).map((capacitance) => ({ kind: 'series-capacitor' as const, capacitance })),
    ...(withLink && coil.kind === 'geometry'
      ? [fc.tuple(winding(4), between(0, 0.02)).map(([w, gap]) => ({ kind: 'link' as const, ...w, gap }))]
      : []),
  );

export const arbitraryTank = (aerialIsCoil: boolean): fc.Arbitrary<TankDescription> =>
  (aerialIsCoil ? geometry : fc.oneof(geometry, geometry, electricalCoil)).chain((coil) =>
    couplingTo(coil, true).chain((detectorCoupling) =>
      merge(
        fc.record({
          coil: fc.constant(coil),
          capacitor,
          wiring: fc.record({ length: between(0, 0.1), diameter: decades(0.3e-3, 3e-3) }),
          joints: fc.record({ count: fc.integer({ min: 0, max: 20 }), resistance: decades(1e-4, 0.1) }),
          strayCapacitance: decades(0.1e-12, 10e-12),
          detectorCoupling: fc.constant(detectorCoupling),
        }),
        aerialIsCoil ? fc.constant({}) : fc.record({ aerialCoupling: couplingTo(coil, true) }),
        detectorCoupling.kind === 'series-capacitor' ? fc.record({ detectorReturn: decades(1e4, 1e7) }) : fc.constant({}),
      ),
    ),
  ) as fc.Arbitrary<TankDescription>;

const temperature = between(250, 320);
const measured = fc
  .tuple(decades(1e-8, 1e-4), between(1, 2), ascending(between(0.005, 0.3), 3, 12), ascending(between(0.005, 0.3), 2, 8))
  .map(([is, n, up, down]) => {
    const voltage = [...down.map((v) => -v).reverse(), 0, ...up];
    return { voltage, current: voltage.map((v) => is * Math.expm1(v / (n * 0.02585))) };
  });
export const arbitraryDetector = fc.oneof(
  merge(
    fc.record({
      kind: fc.constant('junction'),
      saturationCurrent: decades(1e-12, 2e-5),
      ideality: between(1, 2),
      seriesResistance: decades(0.5, 300),
      junctionCapacitance: decades(0.05e-12, 5e-12),
      nominalTemperature: between(290, 305),
      temperature,
    }),
    fc.oneof(fc.constant({}), fc.record({ energyGap: between(0.4, 1.2), temperatureExponent: fc.constantFrom(2, 3) })),
  ),
  fc.record({
    kind: fc.constant('channel'),
    threshold: between(-3, 0.6),
    transconductanceFactor: decades(1e-4, 5e-2),
    slopeFactor: between(1, 2),
    gateDrive: between(-1, 1),
    gateBias: between(-1, 1),
    gateCapacitance: decades(0.5e-12, 50e-12),
    drainCapacitance: decades(0.5e-12, 30e-12),
    seriesResistance: decades(1, 100),
    temperature,
  }),
  merge(
    measured,
    fc.record({ kind: fc.constant('table'), capacitance: decades(0.1e-12, 5e-12), seriesResistance: between(0, 50), temperature }),
  ),
) as fc.Arbitrary<DetectorDescription>;

const sensitivity = ascending(fc.constantFrom(100, 200, 400, 1000, 2000, 3000, 4000, 6000, 8000), 1, 6).chain((frequencies) =>
  fc.tuple(...frequencies.map((frequency) => fc.record({ frequency: fc.constant(frequency), level: between(60, 125) }))),
);
const earpieceOf = {
  name: fc.string({ maxLength: 20 }),
  coupling: fc.constantFrom('insert', 'plug', 'supra-aural', 'circumaural', 'open' as const),
  sensitivity,
  sensitivityAt: fc.constantFrom('1 V', '1 mW' as const),
  coupler: fc.constantFrom('IEC 60318-1', 'IEC 60318-4', '6 cc' as const),
  sensitivitySpread: between(0, 10),
  ears: fc.constantFrom(1, 2 as const),
};
const earpiece = fc.oneof(
  fc.record({
    ...earpieceOf,
    kind: fc.constant('piezo'),
    capacitance: decades(2e-10, 1e-7),
    lossTangent: between(0, 0.05),
    leakResistance: decades(1e5, 1e9),
  }),
  merge(
    fc.record({ ...earpieceOf, kind: fc.constant('magnetic'), resistance: decades(4, 4000), inductance: decades(1e-5, 3) }),
    maybe('motional', fc.record({ resistance: decades(5, 5000), inductance: decades(1e-4, 1), capacitance: decades(1e-9, 1e-5) })),
  ),
) as fc.Arbitrary<Earpiece>;
const transformer = decades(0.1, 80).chain((primaryInductance) =>
  fc.record({
    ratio: decades(0.2, 100),
    primaryInductance: fc.constant(primaryInductance),
    primaryResistance: decades(5, 5000),
    secondaryResistance: decades(0.2, 500),
    leakageInductance: between(0.001, 0.05).map((share) => share * primaryInductance),
    coreLoss: decades(3e3, 3e6),
    capacitance: decades(20e-12, 2e-9),
  }),
);
export const arbitraryPhones = merge(
  fc.record({ bypass: fc.oneof(fc.constant(0), decades(10e-12, 5e-9)), earpiece }),
  maybe('load', decades(1e3, 1e7)),
  maybe('choke', fc.record({ inductance: decades(0.1, 50), resistance: decades(10, 5000) })),
  maybe('blocking', decades(1e-9, 1e-5)),
  maybe('transformer', transformer),
) as fc.Arbitrary<PhonesDescription>;

const audible = ascending(fc.constantFrom(125, 250, 500, 1000, 2000, 4000, 8000), 2, 7);
export const arbitraryEar = fc.record({
  hearingLevel: fc.oneof(
    fc.constant([]),
    audible.chain((fs) => fc.tuple(...fs.map((frequency) => fc.record({ frequency: fc.constant(frequency), level: between(-10, 80) })))),
  ),
  room: fc.oneof(
    between(15, 60).map((rating) => ({ kind: 'noise-criterion', rating })),
    between(15, 70).map((level) => ({ kind: 'a-weighted', level })),
    fc
      .tuple(
        ...[125, 250, 500, 1000, 2000, 4000, 8000].map((frequency) =>
          fc.record({ frequency: fc.constant(frequency), level: between(0, 60) }),
        ),
      )
      .map((bands) => ({ kind: 'bands', bands })),
  ),
}) as fc.Arbitrary<EarDescription>;

const partsOf = (values: fc.Arbitrary<Record<string, unknown>>) =>
  fc.dictionary(
    fc.stringMatching(/^[a-z][a-z0-9 -]{0,12}$/),
    merge(
      fc.record({ values }),
      maybe('title', fc.string({ maxLength: 12 })),
      maybe('source', fc.string({ maxLength: 12 })),
      maybe('estimate', fc.boolean()),
    ),
    { maxKeys: 2, noNullPrototype: true },
  );
const drawerOf = fc.record({
  detectors: partsOf(fc.constant({ kind: 'junction', saturationCurrent: '2 uA', junctionCapacitance: '0.3 pF' })),
  earpieces: fc.constant({}),
  transformers: fc.constant({}),
  capacitors: partsOf(fc.integer({ min: 20, max: 500 }).map((c) => ({ minimum: '5 pF', maximum: `${c} pF` }))),
  wires: fc
    .tuple(
      partsOf(fc.constantFrom({ wireDiameter: '18 AWG' }, { wireDiameter: '1 mm', metal: 'silver' })),
      merge(fc.record({ tapEvery: fc.constantFrom(0.25, 0.5, 1) }), maybe('length', decades(0.1, 100))),
    )
    .map(([parts, stock]) => Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, { ...(part as object), ...stock }]))),
  fromLibrary: fc.subarray(Object.keys(LIBRARY.detectors), { maxLength: 2 }),
  rods: fc.array(fc.record({ length: decades(0.1, 5), diameter: decades(1e-3, 3e-2), metal, count: fc.integer({ min: 1, max: 4 }) }), {
    maxLength: 3,
  }),
  formers: fc.array(
    merge(
      fc.record({ diameter: decades(3e-3, 0.1) }),
      maybe('title', fc.string({ maxLength: 12 })),
      maybe('length', decades(5e-3, 0.2)),
      maybe('stays', fc.record({ permittivity: between(1, 9), lossTangent: between(0, 0.1) })),
    ),
    { maxLength: 3 },
  ),
  resistors: fc.array(decades(1e3, 1e7), { maxLength: 3 }),
  chokes: fc.array(fc.record({ inductance: decades(0.1, 100), resistance: decades(10, 1e4) }), { maxLength: 2 }),
  fixedCapacitors: fc.array(decades(1e-12, 1e-9), { maxLength: 3 }),
});
const drawer = merge(
  drawerOf,
  maybe('garden', fc.record({ length: decades(3, 50), height: decades(1, 12), earthResistance: decades(5, 200) })),
) as fc.Arbitrary<Drawer>;

export const arbitrarySetFile: fc.Arbitrary<SetFile> = arbitraryAerial
  .chain(
    (aerial) =>
      merge(
        fc.record({
          name: fc.string({ unit: 'grapheme', maxLength: 30 }),
          notes: fc.string({ unit: 'binary', maxLength: 50 }),
          aerial: fc.constant(aerial),
          tank: arbitraryTank(aerial.kind === 'coil'),
          detector: arbitraryDetector,
          phones: arbitraryPhones,
          ear: arbitraryEar,
          programme: fc.record({ tone: decades(100, 8000), level: between(-12, 6) }),
          drawer,
        }),
        maybe('place', arbitraryPlace),
      ) as fc.Arbitrary<SetFile>,
  )
  // objects of the ordinary kind, which records of fast-check need not be
  .map((set) => structuredClone(set));
