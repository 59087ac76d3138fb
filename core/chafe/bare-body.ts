import type { MechanismHazard } from './mechanism-hazard.ts';
import { quickTail } from './quick-tail.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import { cellOf, motionOf, type RunMotion, swingOf, swingsOfSpan } from './run-motion.ts';
import type { Span } from './span.ts';

/**
 * Every loom lies along painted body or a trim's back; each span rubs on it as hard as it can move. One
 * cause a span, so that each can be named with its own clip gap.
 * @example
 * bareBodyHazards(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions)).length // => 3
 */
export function bareBodyHazards(run: RunContext): readonly MechanismHazard[] {
  const { assumptions, cellMm, spans } = run;
  const { baseRates, surfaceSeverity } = assumptions;
  const factor = baseRates.vibration * 3600 * surfaceSeverity.body * causeFactor(run, 'bare-body');
  const motion = motionOf(run);
  const hazards: MechanismHazard[] = [];
  let slice = 0;
  while (slice < motion.sliceCount) {
    const first = slice;
    const index = motion.spanOf[first] as number;
    while (slice < motion.sliceCount && motion.spanOf[slice] === index) slice++;
    const span = spans[index] as Span;
    const firstCell = cellOf(motion, first);
    const perMm = new Float64Array(cellOf(motion, slice - 1) - firstCell + 1);
    let cell = firstCell;
    for (let s = first; s < slice; s++) {
      while ((motion.firstSlice[2 * cell + 2] as number) <= s) cell++;
      const rubbed = (bodyRubbing(run, span, motion, s) * (motion.share[s] as number)) / 2;
      perMm[cell - firstCell] = (perMm[cell - firstCell] as number) + factor * rubbed;
    }
    const middleMm =
      (Math.max(0, span.fromMm) + Math.min(run.cellCount * cellMm, Math.max(0, span.toMm))) / 2;
    hazards.push({
      cause: 'bare-body',
      mechanism: 'vibration',
      thing: run.segment.id,
      figures: spanFigures(run, middleMm),
      firstCell,
      perMm,
      placed: false,
    });
  }
  return hazards;
}

/** Mean over a slice of `rubWork` times wear against a surface that the loom lies on; spare loom presses on it. */
function bodyRubbing(
  { assumptions, segment }: RunContext,
  span: Span,
  { sine, worth }: RunMotion,
  slice: number,
): number {
  const { clearanceSigmaMm, motionAtClip, tightForceN } = assumptions;
  const forceN = segment.traits.includes('drawn-tight') ? tightForceN : 0;
  let sum = 0;
  for (let k = 0; k < swingsOfSpan; k++) {
    const at = swingsOfSpan * slice + k;
    const most = worth[at] as number;
    const drive = most > 0 ? swingOf(span, k)?.drive : null;
    if (!drive) continue;
    const height = sine[at] as number;
    const spareMm = drive.slackReachMm * height;
    const contact = spareMm === 0 ? 0.5 : quickTail(-spareMm / clearanceSigmaMm);
    sum += most * contact;
    if (forceN === 0) continue;
    const shape = motionAtClip + (1 - motionAtClip) * height;
    sum += (most / (drive.work * shape)) * forceN * contact * 4 * drive.hz * drive.motionMm;
  }
  return sum;
}
