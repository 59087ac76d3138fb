import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { Wire } from '../wire/wire-shape.ts';
import { bareBody } from './bare-body.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';
import { clipEdges } from './clip-edges.ts';
import { footLoad } from './foot-load.ts';
import { listedCauses, type MechanismOfRun, wholeSums } from './hazard-sums.ts';
import { hingeFlex } from './hinge-flex.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { passThrough } from './pass-through.ts';
import { rubSpots } from './rub-spots.ts';
import { type RunContext, runContext } from './run-context.ts';
import { type RunSurroundings, runSurroundings, sameSurroundings } from './run-surroundings.ts';
import { seatSlide } from './seat-slide.ts';
import { addSpread, cellBell } from './smooth-cells.ts';
import { tightBends } from './tight-bends.ts';
import { wetRun } from './wet.ts';

/**
 * Hazard of one run, whoever's circuit it carries, before drawn places are spread by the doubt of where they
 * are. Joints and the even floor belong to a circuit.
 */
export interface SegmentHazard {
  readonly lengthMm: number;
  /** Equal cells from the run's `fromNodeId` end. */
  readonly cellCount: number;
  readonly cellMm: number;
  /** Worked out when first asked for. */
  readonly causes: readonly MechanismHazard[];
  /** All causes together and spread, per hour and mm of drawn loom, in each cell. */
  readonly perMm: Float64Array;
}

const everyMechanism: readonly MechanismOfRun[] = [
  bareBody,
  rubSpots,
  clipEdges,
  passThrough,
  tightBends,
  hingeFlex,
  seatSlide,
  footLoad,
  wetRun,
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
  const sums = wholeSums(run.cellCount);
  for (const mechanism of everyMechanism) mechanism(run, sums);
  // All causes tied to a place share one doubt of where it is, so their sum is spread once.
  const bell = cellBell(run.cellMm, assumptions.placeSigmaMm);
  const perMm = addSpread(sums.lying, sums.placed, bell);
  return new HazardOfRun(run, perMm, wire);
}

/** Keeps what a run's hazard came from, not what was worked out on the way: causes are seldom asked for. */
class HazardOfRun implements SegmentHazard {
  readonly lengthMm: number;
  readonly cellCount: number;
  readonly cellMm: number;
  readonly perMm: Float64Array;
  readonly #segment: Segment;
  readonly #around: RunSurroundings;
  readonly #assumptions: ChafeAssumptions;
  readonly #wire: Wire | null;
  #causes: readonly MechanismHazard[] | null = null;
  constructor(run: RunContext, perMm: Float64Array, wire: Wire | null) {
    this.lengthMm = run.lengthMm;
    this.cellCount = run.cellCount;
    this.cellMm = run.cellMm;
    this.perMm = perMm;
    this.#segment = run.segment;
    this.#around = run.around;
    this.#assumptions = run.assumptions;
    this.#wire = wire;
  }

  get causes(): readonly MechanismHazard[] {
    if (!this.#causes) {
      const run = runContext(this.#segment, this.#around, this.#assumptions, this.#wire);
      this.#causes = listedCauses(run, everyMechanism);
    }
    return this.#causes;
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
