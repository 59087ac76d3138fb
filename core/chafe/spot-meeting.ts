import type { RubSpot } from '../map/records.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import type { NearSpot } from './near-spots.ts';
import type { RunContext } from './run-context.ts';
import type { Span, Swing } from './span.ts';

/** A spot that adds less than this share of what the bare body beside it adds is left out there. */
const leastShare = 1e-3;
/** No spot reaches farther than this: one two hundred thousand times as sharp as the body beside it. */
const mostSigmas = 6;

/** How a run meets one spot. */
export interface SpotMeeting {
  readonly inSpace: boolean;
  readonly tauMm: number;
  /** From distance off the centre line to free gap. */
  readonly offsetMm: number;
  /** So many sigmas off nothing is counted. */
  readonly sigmas: number;
}

/** The farthest that any swing of a run comes towards a spot, on each of its sides. */
export interface RunReach {
  readonly level: number;
  readonly below: number;
  readonly sigmaMm: number;
}

/**
 * How far the swings of a run come at most.
 * @example
 * runReach([{ drive: { slackReachMm: 3, sagMm: 1, sigmaMm: 2 }, ifFromGone: null, ifToGone: null }]) // => { level: 3, below: 4, sigmaMm: 2 }
 */
export function runReach(spans: readonly (Reaching & Pick<Span, 'ifFromGone' | 'ifToGone'>)[]): RunReach {
  const most = { level: 0, below: 0, sigmaMm: 0 };
  for (const span of spans) {
    addReach(most, span);
    if (span.ifFromGone) addReach(most, span.ifFromGone);
    if (span.ifToGone) addReach(most, span.ifToGone);
  }
  return most;
}

interface Reaching {
  readonly drive: Pick<Swing['drive'], 'slackReachMm' | 'sagMm' | 'sigmaMm'>;
}

function addReach(most: { level: number; below: number; sigmaMm: number }, { drive }: Reaching): void {
  const { slackReachMm, sagMm, sigmaMm } = drive;
  if (slackReachMm > most.level) most.level = slackReachMm;
  if (slackReachMm + sagMm > most.below) most.below = slackReachMm + sagMm;
  if (sigmaMm > most.sigmaMm) most.sigmaMm = sigmaMm;
}

/**
 * How a run meets a spot; null when none of its swings can come near. `nearestMm` is the distance of the run that
 * a given clearance belongs to.
 * @example
 * spotMeeting(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions), nearSpots(sample.map, sample.middle, 200)[0], 4, { level: 0, below: 0, sigmaMm: 1 }).tauMm // => 6
 */
export function spotMeeting(
  { assumptions, through }: RunContext,
  near: NearSpot,
  nearestMm: number,
  most: RunReach,
): SpotMeeting | null {
  const { spot, inSpace } = near;
  const given = spot.clearanceMm !== null || inSpace;
  const tauMm = given ? assumptions.clearanceSigmaMm : assumptions.planClearanceSigmaMm;
  const offsetMm = spot.clearanceMm === null ? -through.bundle.diameterMm / 2 : spot.clearanceMm - nearestMm;
  const droopMm = spot.side === 'above' ? 0 : most[spot.side];
  const wideMm = Math.sqrt(most.sigmaMm * most.sigmaMm + tauMm * tauMm);
  if (near.leastMm > droopMm + mostSigmas * wideMm - offsetMm) return null;
  const sigmas = sigmasOf(spot, assumptions);
  const reachMm = Math.min(assumptions.reachMm, droopMm + sigmas * wideMm - offsetMm);
  if (near.leastMm > reachMm || near.distanceMm > reachMm) return null;
  return { inSpace, tauMm, offsetMm, sigmas };
}

const knownSigmas = new WeakMap<ChafeAssumptions, Map<number, number>>();

/** So many sigmas off a gap, the contact with a spot is the least share of that with the bare body, one half. */
function sigmasOf(spot: RubSpot, assumptions: ChafeAssumptions): number {
  let table = knownSigmas.get(assumptions);
  if (!table) {
    table = new Map();
    knownSigmas.set(assumptions, table);
  }
  const severity = drawnSeverity(spot, assumptions);
  let sigmas = table.get(severity);
  if (sigmas === undefined) {
    sigmas = sigmasBefore((leastShare * assumptions.surfaceSeverity.body) / 2 / severity);
    table.set(severity, sigmas);
  }
  return sigmas;
}

/** The tail of z is under bell(z) / z: twice round is near enough, and never too little. */
function sigmasBefore(leastTail: number): number {
  const farthest = Math.sqrt(2 * Math.max(2, -Math.log(leastTail)));
  const nearer = Math.sqrt(2 * Math.max(2, -Math.log(leastTail * farthest * 0.8 * Math.sqrt(2 * Math.PI))));
  return Math.min(mostSigmas, nearer);
}

/**
 * How fast a spot wears through a loom, by what is drawn.
 * @example
 * drawnSeverity({ kind: 'raw-edge', severity: 3 }, defaultAssumptions) // => 0.6
 */
export function drawnSeverity(
  spot: Pick<RubSpot, 'kind' | 'severity'>,
  { edgeSeverity, severityFactor }: Pick<ChafeAssumptions, 'edgeSeverity' | 'severityFactor'>,
): number {
  return edgeSeverity[spot.kind] * severityFactor[spot.severity];
}
