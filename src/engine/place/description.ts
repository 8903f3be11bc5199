/** What a person says about where they listen. SI units, angles in radians. */

export type Polarisation = 'horizontal' | 'vertical' | 'mixed';

/** Latitude and longitude [rad], north and east positive, WGS 84 read on a sphere. */
export interface Coordinates {
  readonly latitude: number;
  readonly longitude: number;
}

/** Where a mast is, seen from the site: straight, or by its own coordinates (then the site must have some too). */
export type MastPosition = { readonly distance: number; readonly bearing: number } | { readonly coordinates: Coordinates };

/** Ground constants: relative permittivity and conductivity [S/m]. */
export interface Ground {
  readonly permittivity: number;
  readonly conductivity: number;
}

/** Height of the ground above sea level [m] at ascending distances [m] from the mast (0) to the site. */
export interface TerrainProfile {
  readonly distance: readonly number[];
  readonly height: readonly number[];
}

export type Modulation =
  | {
      readonly kind: 'fm';
      /** peak deviation at full modulation [Hz] */
      readonly deviation: number;
      /** pre-emphasis time constant [s] */
      readonly preEmphasis: number;
      readonly stereo: boolean;
    }
  | {
      readonly kind: 'am';
      /** peak modulation depth of programme, 0 to 1 */
      readonly depth: number;
    };

export interface Station {
  readonly name: string;
  /** carrier [Hz] */
  readonly frequency: number;
  /**
   * Radiated power [W]. At 30 MHz and above: effective radiated power, over a half-wave dipole (e.r.p.).
   * Below: effective monopole radiated power, over a short vertical monopole on perfect ground (e.m.r.p.; 1 kW gives 300 mV/m at 1 km).
   */
  readonly power: number;
  readonly polarisation: Polarisation;
  /** height of the transmitting aerial above the ground at the mast [m] */
  readonly mastHeight: number;
  /** height above the mean level of the ground 3 to 15 km towards the site [m], P.1546; the mast height where not given */
  readonly effectiveHeight?: number;
  readonly position: MastPosition;
  readonly modulation: Modulation;
  /** what it sends, for the sound it will make */
  readonly programme: 'speech' | 'music';
  /** rms field the user measured at the site [V/m]; overrides every computed one */
  readonly measuredField?: number;
  readonly terrain?: TerrainProfile;
}

/** How the field is found. `auto`: measured if given, else terrain if a profile is given, else curves (FM) or ground wave (below 30 MHz). */
export type FieldMethod = 'auto' | 'free-space' | 'smooth-earth' | 'terrain' | 'broadcast-curves' | 'ground-wave';

/** The method in fact used. */
export type UsedMethod = Exclude<FieldMethod, 'auto'> | 'measured';

export interface Site {
  readonly coordinates?: Coordinates;
  /** height of the aerial's middle above ground [m] */
  readonly height: number;
  /** what stands around: sets the clutter height of P.1546 */
  readonly surroundings: 'open' | 'suburban' | 'urban' | 'dense-urban';
  readonly ground: Ground;
  /** present if the aerial is indoors */
  readonly building?: {
    readonly kind: 'traditional' | 'thermally-efficient';
    /** share of rooms with no more loss than this, 0 to 1; 0.5 is the median room */
    readonly probability: number;
  };
  /** man-made radio noise around, ITU-R P.372 */
  readonly radioNoise: 'city' | 'residential' | 'rural' | 'quiet-rural';
}

export interface Place {
  readonly name: string;
  readonly site: Site;
  readonly method: FieldMethod;
  readonly stations: readonly Station[];
}
