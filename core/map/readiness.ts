import { compareText } from '../quantity/compare-text.ts';
import type { MapDocument } from './map-document.ts';
import { panelCycle } from './panel-order.ts';
import type { Circuit, Segment } from './records.ts';
import { segmentLine } from './segment-line.ts';
import { connectedParts } from './topology.ts';

export const readinessCodes = [
  'scale-set',
  'outline-drawn',
  'runs-drawn',
  'harness-connected',
  'runs-tagged',
  'tags-confirmed',
  'panels-timed',
  'panel-order-clear',
  'circuit-traced',
  'rub-spots-or-clips',
  'mirrored-runs-checked',
] as const;
export type ReadinessCode = (typeof readinessCodes)[number];

/** One line of the checklist. */
export interface ReadinessItem {
  readonly code: ReadinessCode;
  readonly done: boolean;
  /** Without it a job cannot be ranked; the others make the answer better. */
  readonly necessary: boolean;
  /** Done only because the map has nothing yet that the line speaks of. */
  readonly idle: boolean;
  /** Ids of the things that lack it, sorted; empty when done or when it is the map as a whole. */
  readonly things: readonly string[];
}

/**
 * The checklist of what a map still lacks before a job can use it: a report, not a gate. A harness in
 * several parts counts as connected when each part has a named route; a run counts as tagged when a panel
 * is over it anywhere or it was said to be in view. O(records log records).
 * @example
 * readiness(sample.map).filter((item) => !item.done).map((item) => item.code) // => ['scale-set', 'outline-drawn', 'runs-tagged']
 */
export function readiness(map: MapDocument): readonly ReadinessItem[] {
  const segments = [...map.segments.values()];
  const panels = [...map.panels.values()];
  const lacking = (
    code: ReadinessCode,
    necessary: boolean,
    things: Iterable<{ readonly id: string }>,
    asked: readonly unknown[],
  ): ReadinessItem => {
    const ids = Array.from(things, (thing) => thing.id).sort(compareText);
    return { code, necessary, done: ids.length === 0, idle: asked.length === 0, things: ids };
  };
  const wanted = (code: ReadinessCode, necessary: boolean, done: boolean): ReadinessItem => ({
    code,
    necessary,
    done,
    idle: false,
    things: [],
  });
  const untagged = segments.filter((segment) => segment.tags.length === 0 && !segment.inView);
  const tagged = segments.filter((segment) => segment.tags.length > 0);
  const cycle = panelCycle(map.panels) ?? [];
  const untraced = [...map.circuits.values()].filter((circuit) => !isTraced(map, circuit));
  const traced = map.circuits.size > untraced.length;
  const clipped = map.rubSpots.size > 0 || segments.some((segment) => segment.clips.length > 0);
  return [
    wanted('scale-set', false, map.details.scale !== null),
    wanted('outline-drawn', false, map.outlines.size > 0),
    wanted('runs-drawn', true, segments.length > 0),
    lacking('harness-connected', false, strayRuns(map), segments),
    lacking('runs-tagged', false, untagged, segments),
    lacking(
      'tags-confirmed',
      false,
      tagged.filter((segment) => segment.tags.some((tag) => !tag.confirmed)),
      tagged,
    ),
    lacking(
      'panels-timed',
      false,
      panels.filter((panel) => panel.minutesOff <= 0),
      panels,
    ),
    lacking(
      'panel-order-clear',
      true,
      cycle.map((id) => ({ id })),
      panels,
    ),
    traced
      ? wanted('circuit-traced', true, true)
      : { ...lacking('circuit-traced', true, untraced, untraced), done: false, idle: false },
    wanted('rub-spots-or-clips', false, clipped),
    lacking(
      'mirrored-runs-checked',
      false,
      segments.filter((segment) => segment.unchecked),
      segments,
    ),
  ];
}

/**
 * Whether everything a job cannot do without is there: runs, a panel order that can be followed, and one
 * circuit traced from end to end.
 * @example
 * readyForJob(readiness(sample.map)) // => true
 */
export function readyForJob(items: readonly ReadinessItem[]): boolean {
  return items.every((item) => item.done || !item.necessary);
}

/** The smaller parts of a harness in pieces, unless every piece has a named route. */
function strayRuns(map: MapDocument): readonly Segment[] {
  const parts = connectedParts(map);
  const runsOf = (part: (typeof parts)[number]): Segment[] =>
    part.segmentIds.flatMap((id) => map.segments.get(id) ?? []);
  const unnamed = parts.map(runsOf).filter((runs) => runs.every((run) => run.routeName.trim() === ''));
  return parts.length > 1 ? unnamed.flat() : [];
}

/** Whether a circuit's path goes without a gap from one known end to the other. */
function isTraced(map: MapDocument, circuit: Circuit): boolean {
  const [first, last] = circuit.ends;
  let at = first.nodeId;
  if (at === null || last.nodeId === null || circuit.path.length === 0) return false;
  for (const step of circuit.path) {
    const segment = map.segments.get(step.segmentId);
    if (!segment || !segmentLine(map, segment)) return false;
    const start = step.reversed ? segment.toNodeId : segment.fromNodeId;
    if (start !== at) return false;
    at = step.reversed ? segment.fromNodeId : segment.toNodeId;
  }
  return at === last.nodeId;
}
