import type { Segment } from '../map/records.ts';
import { wireLengthMm } from '../map/segment-line.ts';
import type { Bundle } from '../wire/bundle.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import { apartHolds, type Hold } from './holding.ts';
import type { RunSurroundings } from './run-surroundings.ts';
import { type SpanDrive, spanDrive } from './span-drive.ts';

/** A stretch of loom that swings between two holds. */
export interface Swing {
  readonly fromMm: number;
  readonly drive: SpanDrive;
}

/** One span of a run: from hold to hold, which may lie past the run's ends. */
export interface Span extends Swing {
  readonly toMm: number;
  readonly missingClips: number;
  /** The longer swing if the clip at either end has come off; null where something solid holds. */
  readonly ifFromGone: Swing | null;
  readonly ifToGone: Swing | null;
}

/**
 * The spans that a run lies in, in order. Clips marked missing hold nothing; where an end does not hold, the
 * span goes on to the next hold past it; a free end moves like the middle of a span twice as long.
 * @example
 * spansOfRun(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), bundleThrough(sample.map, 'segment:front').bundle, defaultAssumptions).map((span) => span.toMm) // => [100, 400, 500]
 */
export function spansOfRun(
  segment: Segment,
  around: RunSurroundings,
  bundle: Bundle,
  { ride, motionCap }: ChafeAssumptions,
): readonly Span[] {
  const beam = { kgPerMetre: bundle.kgPerMetre, stiffnessNMm2: bundle.stiffnessNMm2.mean };
  const { lengthMm } = around.shape.line;
  const sparePerMm = Math.max(0, wireLengthMm(segment, lengthMm) - lengthMm) / lengthMm;
  const swing = (from: Hold, to: Hold): Swing => {
    const spanMm = to.atMm - from.atMm;
    return { fromMm: from.atMm, drive: spanDrive(beam, spanMm, sparePerMm * spanMm, ride, motionCap) };
  };
  const missing = segment.clips.filter((clip) => clip.missing);
  const holds = holdsOfRun(segment, around);
  const spans: Span[] = [];
  // The swing with a clip gone is one for the spans on either side of that clip.
  let overFrom: Swing | null = null;
  for (let i = 1; i < holds.length; i++) {
    const from = holds[i - 1] as Hold;
    const to = holds[i] as Hold;
    if (to.atMm <= 0 || from.atMm >= lengthMm) continue;
    const before = holds[i - 2];
    const after = holds[i + 1];
    const ifFromGone: Swing | null = before && !from.solid ? (overFrom ?? swing(before, to)) : null;
    const ifToGone = after && !to.solid ? swing(from, after) : null;
    overFrom = ifToGone;
    spans.push({
      ...swing(from, to),
      toMm: to.atMm,
      missingClips:
        missing.length === 0
          ? 0
          : missing.filter(({ stationMm }) => stationMm > from.atMm && stationMm < to.atMm).length,
      ifFromGone,
      ifToGone,
    });
  }
  return spans;
}

/** Everything that holds the run, first to last, with at least one hold at or past each end. */
function holdsOfRun(segment: Segment, { shape, beyondFrom, beyondTo }: RunSurroundings): readonly Hold[] {
  const { lengthMm } = shape.line;
  const clips = segment.clips
    .filter((clip) => !clip.missing)
    .map((clip) => ({ atMm: Math.min(clip.stationMm, lengthMm), solid: false }));
  const before = beyondFrom.map(({ atMm, solid }) => ({ atMm: -atMm, solid }));
  const after = beyondTo.map(({ atMm, solid }) => ({ atMm: lengthMm + atMm, solid }));
  const holds: Hold[] = [...apartHolds([...before, ...clips, ...after])];
  const first = holds[0]?.atMm ?? lengthMm;
  const last = holds[holds.length - 1]?.atMm ?? 0;
  if (before.length === 0) holds.unshift({ atMm: -first, solid: true });
  if (after.length === 0) holds.push({ atMm: 2 * lengthMm - last, solid: true });
  return apartHolds(holds);
}

/**
 * Index of the span that holds a station of the run, looking from a span known to be at or before it.
 * @example
 * spanIndexAt([{ toMm: 100 }, { toMm: 400 }, { toMm: 500 }], 250) // => 1
 */
export function spanIndexAt(spans: readonly Pick<Span, 'toMm'>[], stationMm: number, start = 0): number {
  let index = start;
  while (index < spans.length - 1 && (spans[index] as Span).toMm <= stationMm) index++;
  return index;
}
