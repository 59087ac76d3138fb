import type { ChafeAssumptions } from './chafe-assumptions.ts';
import type { HazardSums } from './hazard-sums.ts';
import { quickTail } from './quick-tail.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { motionOf, type RunMotion, swingsOfSpan } from './run-motion.ts';
import type { Span } from './span.ts';

/**
 * Every loom lies along painted body or a trim's back; each span rubs on it as hard as it can move. One
 * cause a span, so that each can be named with its own clip gap.
 * @example
 * listedCauses(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), [bareBody]).length // => 3
 */
export function bareBody(run: RunContext, sums: HazardSums): void {
  const { assumptions, spans } = run;
  const { baseRates, surfaceSeverity } = assumptions;
  const factor = baseRates.vibration * 3600 * surfaceSeverity.body * causeFactor(run, 'bare-body');
  const motion = motionOf(run);
  const { sliceCount, spanOf } = motion;
  const forceN = run.segment.traits.includes('drawn-tight') ? assumptions.tightForceN : 0;
  let first = 0;
  while (first < sliceCount) {
    const index = spanOf[first] as number;
    let end = first + 1;
    while (end < sliceCount && spanOf[end] === index) end++;
    const span = spans[index] as Span;
    const cells = sums.cellsOf({
      cause: 'bare-body',
      mechanism: 'vibration',
      thing: run.segment.id,
      placed: false,
      figures: () => spanFigures(run, middleOnRun(run, span)),
    });
    if (forceN === 0 && span.drive.slackReachMm === 0) addLying(cells, motion, first, end, factor);
    else addPressing(cells, motion, first, end, factor, forceN, assumptions);
    first = end;
  }
}

/** Middle of that part of a span that lies on the run. */
function middleOnRun({ cellCount, cellMm }: RunContext, { fromMm, toMm }: Span): number {
  return (Math.max(0, fromMm) + Math.min(cellCount * cellMm, Math.max(0, toMm))) / 2;
}

/** Adds the mean over slices of `rubWork` times wear where the loom just lies on the body: half of it touches. */
function addLying(
  cells: Float64Array,
  { halfOf, share, worth }: RunMotion,
  first: number,
  end: number,
  factor: number,
): void {
  const quarter = factor / 4;
  for (let slice = first; slice < end; slice++) {
    const at = swingsOfSpan * slice;
    const all = (worth[at] as number) + (worth[at + 1] as number) + (worth[at + 2] as number);
    const cell = (halfOf[slice] as number) >> 1;
    cells[cell] = (cells[cell] as number) + quarter * all * (share[slice] as number);
  }
}

/** The same where spare loom presses on the body, or a steady force does. */
function addPressing(
  cells: Float64Array,
  { halfOf, spanOf, share, sine, worth, swings }: RunMotion,
  first: number,
  end: number,
  factor: number,
  forceN: number,
  { clearanceSigmaMm, motionAtClip }: ChafeAssumptions,
): void {
  const firstSwing = swingsOfSpan * (spanOf[first] as number);
  for (let slice = first; slice < end; slice++) {
    let sum = 0;
    for (let k = 0; k < swingsOfSpan; k++) {
      const at = swingsOfSpan * slice + k;
      const most = worth[at] as number;
      if (most === 0) continue;
      const height = sine[at] as number;
      const contact = quickTail((-(swings.slackMm[firstSwing + k] as number) * height) / clearanceSigmaMm);
      const shape = motionAtClip + (1 - motionAtClip) * height;
      sum += most * contact * (1 + (forceN * (swings.slipOverWork[firstSwing + k] as number)) / shape);
    }
    const cell = (halfOf[slice] as number) >> 1;
    cells[cell] = (cells[cell] as number) + (factor * sum * (share[slice] as number)) / 2;
  }
}
