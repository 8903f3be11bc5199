import type { AerialDescription } from '../aerial/index.ts';
import type { DetectorDescription } from '../detector/index.ts';
import type { EarDescription } from '../ear/index.ts';
import type { PhonesDescription } from '../phones/index.ts';
import type { ProgrammeDescription } from '../programme/index.ts';
import type { TankDescription } from '../tank/index.ts';

/** One receiver, from the aerial to the phones. */
export interface SetDescription {
  readonly aerial: AerialDescription;
  readonly tank: TankDescription;
  readonly detector: DetectorDescription;
  readonly phones: PhonesDescription;
}

/** Who listens, to what. */
export interface Listener {
  readonly ear: EarDescription;
  readonly programme: ProgrammeDescription;
}
