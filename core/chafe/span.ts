import type { Segment } from '../map/records.ts';
import { wireLengthMm } from '../map/segment-line.ts';
import type { Bundle } from '../wire/bundle.ts';
import type { ChafeAssumptions } from './chafe-assumptions.ts';
import type { RunSurroundings } from './run-surroundings.ts';
import { type SpanDrive, spanDrive } from './span-drive.ts';

/** One span of a run: from hold to hold, which may lie past the run's ends. */
export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
  readonly drive: SpanDrive;
  readonly missingClips: number;
}

/**
 * The spans of a run, in order. Clips marked missing hold nothing; where an end does not hold, the span goes
 * on to the next hold past it; a free end moves like the middle of a span twice as long.
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
  const missing = segment.clips.filter((clip) => clip.missing);
  const holds = holdsOfRun(segment, around);
  const spans: Span[] = [];
  for (let i = 1; i < holds.length; i++) {
    const fromMm = holds[i - 1] as number;
    const toMm = holds[i] as number;
    const spanMm = toMm - fromMm;
    if (spanMm <= 0) continue;
    const inSpan = missing.filter(({ stationMm }) => stationMm > fromMm && stationMm < toMm);
    const drive = spanDrive(beam, spanMm, sparePerMm * spanMm, ride, motionCap);
    spans.push({ fromMm, toMm, drive, missingClips: inSpan.length });
  }
  return spans;
}

/** Stations of everything that holds, first to last, one at or past each end. */
function holdsOfRun(
  segment: Segment,
  { shape, beyondFromMm, beyondToMm }: RunSurroundings,
): readonly number[] {
  const { lengthMm } = shape.line;
  const clips: number[] = [];
  for (const clip of segment.clips) if (!clip.missing) clips.push(Math.min(clip.stationMm, lengthMm));
  clips.sort((a, b) => a - b);
  const fromHeld = Number.isFinite(beyondFromMm);
  const toHeld = Number.isFinite(beyondToMm);
  const first = clips[0] ?? lengthMm + (toHeld ? beyondToMm : 0);
  const last = clips[clips.length - 1] ?? (fromHeld ? -beyondFromMm : 0);
  return [
    fromHeld ? -beyondFromMm : -first,
    ...clips,
    toHeld ? lengthMm + beyondToMm : lengthMm + (lengthMm - last),
  ];
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
