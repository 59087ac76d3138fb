import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { Wire } from '../wire/wire-shape.ts';
import { bareBodyHazards } from './bare-body.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';
import { clipEdgeHazards } from './clip-edges.ts';
import { footLoadHazards } from './foot-load.ts';
import { hingeFlexHazards } from './hinge-flex.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { passThroughHazards } from './pass-through.ts';
import { rubSpotHazards } from './rub-spots.ts';
import { type RunContext, runContext } from './run-context.ts';
import { type RunSurroundings, runSurroundings, sameSurroundings } from './run-surroundings.ts';
import { seatSlideHazards } from './seat-slide.ts';
import { addSpread, cellBell } from './smooth-cells.ts';
import { tightBendHazards } from './tight-bends.ts';
import { wetHazards } from './wet.ts';

/**
 * Hazard of one run, whoever's circuit it carries, before drawn places are spread by the doubt of where they
 * are. Joints and the even floor belong to a circuit.
 */
export interface SegmentHazard {
  readonly lengthMm: number;
  /** Equal cells from the run's `fromNodeId` end. */
  readonly cellCount: number;
  readonly cellMm: number;
  readonly causes: readonly MechanismHazard[];
  /** All causes together and spread, per hour and mm of drawn loom, in each cell. */
  readonly perMm: readonly number[];
}

const everyMechanism: readonly ((run: RunContext) => readonly MechanismHazard[])[] = [
  bareBodyHazards,
  rubSpotHazards,
  clipEdgeHazards,
  passThroughHazards,
  tightBendHazards,
  hingeFlexHazards,
  seatSlideHazards,
  footLoadHazards,
  wetHazards,
];

/** The newest answer for a run, with what it was asked for. */
interface Remembered {
  readonly around: RunSurroundings;
  readonly assumptions: ChafeAssumptions;
  readonly wire: Wire | null;
  readonly hazard: SegmentHazard;
}
const known = new WeakMap<Segment, Remembered>();

/**
 * Hazard along one run; null for one half drawn. Depends on the run, its nodes, how its neighbours hold and
 * cover it, its bundle and the spots near, and is worked out anew only when one of them changed. Ask "what if"
 * by passing a changed run under the same id. `wire` is the wire under search, else the weakest traced through.
 * O(cells x causes near).
 * @example
 * segmentHazard(sample.map, sample.middle).cellCount // => 50
 */
export function segmentHazard(
  map: MapDocument,
  segment: Segment,
  assumptions: ChafeAssumptions = defaultAssumptions,
  wire: Wire | null = null,
): SegmentHazard | null {
  const around = runSurroundings(map, segment, assumptions);
  if (!around) return null;
  const before = known.get(segment);
  if (
    before &&
    before.assumptions === assumptions &&
    sameWire(before.wire, wire) &&
    sameSurroundings(before.around, around)
  ) {
    return before.hazard;
  }
  const hazard = hazardAmid(segment, around, assumptions, wire);
  known.set(segment, { around, assumptions, wire, hazard });
  return hazard;
}

const sameWire = (a: Wire | null, b: Wire | null) =>
  a === b || (a?.conductorMm2 === b?.conductorMm2 && a?.insulation === b?.insulation);

/**
 * As `segmentHazard`, from the run and its surroundings alone: nothing else in a map matters to it.
 * @example
 * hazardAmid(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions).lengthMm // => 500
 */
export function hazardAmid(
  segment: Segment,
  around: RunSurroundings,
  assumptions: ChafeAssumptions,
  wire: Wire | null = null,
): SegmentHazard {
  const run = runContext(segment, around, assumptions, wire);
  const causes: MechanismHazard[] = [];
  for (const hazards of everyMechanism) for (const cause of hazards(run)) causes.push(cause);
  const perMm = new Array<number>(run.cellCount).fill(0);
  let placed: number[] | null = null;
  for (const cause of causes) {
    if (!cause.placed) addInPlace(perMm, cause);
    else {
      placed ??= new Array<number>(run.cellCount).fill(0);
      addInPlace(placed, cause);
    }
  }
  // All placed causes share one doubt of place, so their sum is spread once.
  if (placed) {
    addSpread(perMm, { firstCell: 0, perMm: placed }, cellBell(run.cellMm, assumptions.placeSigmaMm));
  }
  return { lengthMm: run.lengthMm, cellCount: run.cellCount, cellMm: run.cellMm, causes, perMm };
}

function addInPlace(cells: number[], { firstCell, perMm }: MechanismHazard): void {
  for (let i = 0; i < perMm.length; i++) {
    cells[firstCell + i] = (cells[firstCell + i] as number) + (perMm[i] as number);
  }
}

/**
 * Hazard of a whole run per hour, the figure a "what if" compares.
 * @example
 * wholeHazard(segmentHazard(sample.map, sample.middle)) > wholeHazard(segmentHazard(sample.map, { ...sample.middle, covering: 'braided-sleeve' })) // => true
 */
export function wholeHazard(hazard: SegmentHazard): number {
  let sum = 0;
  for (const density of hazard.perMm) sum += density;
  return sum * hazard.cellMm;
}
