import type { HazardSums } from './hazard-sums.ts';
import { addMass, readAt } from './mass-at.ts';
import { rubWork } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import type { Span } from './span.ts';

/**
 * A clip's own edge rubs the loom with what motion is left there; both neighbouring spans drive it, so a
 * long span wears at its ends too.
 * @example
 * listedCauses(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), [clipEdges]).length // => 2
 */
export function clipEdges(run: RunContext, sums: HazardSums): void {
  const { assumptions, spans, segment } = run;
  const { baseRates, surfaceSeverity, motionAtClip, clearanceSigmaMm, clipLengthMm } = assumptions;
  const factor =
    baseRates.vibration * 3600 * surfaceSeverity.clip * clipLengthMm * causeFactor(run, 'clip-edge');
  const meeting = { clearanceMm: 0, shape: motionAtClip, tauMm: clearanceSigmaMm, forceN: 0 };
  for (const { id, stationMm, missing } of segment.clips) {
    if (missing) continue;
    let work = 0;
    let longest = spans[0] as Span;
    for (const span of spans) {
      if (span.fromMm !== stationMm && span.toMm !== stationMm) continue;
      work += rubWork(span.drive, meeting) / 2;
      if (span.drive.spanMm > longest.drive.spanMm) longest = span;
    }
    const cells = sums.cellsOf({
      cause: 'clip-edge',
      mechanism: 'vibration',
      thing: id,
      placed: true,
      figures: () => spanFigures(run, (longest.fromMm + longest.toMm) / 2),
    });
    addMass(cells, run, stationMm, factor * work * readAt(run, run.wear, stationMm));
  }
}
