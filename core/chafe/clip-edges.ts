import { massAt, readAt } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { rubWork } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * A clip's own edge rubs the loom with what motion is left there; both neighbouring spans drive it, so a
 * long span wears at its ends too.
 * @example
 * clipEdgeHazards(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions)).length // => 2
 */
export function clipEdgeHazards(run: RunContext): readonly MechanismHazard[] {
  const { assumptions, spans, segment } = run;
  const { baseRates, surfaceSeverity, motionAtClip, clearanceSigmaMm, clipLengthMm } = assumptions;
  const factor =
    baseRates.vibration * 3600 * surfaceSeverity.clip * clipLengthMm * causeFactor(run, 'clip-edge');
  const meeting = { clearanceMm: 0, shape: motionAtClip, tauMm: clearanceSigmaMm, forceN: 0 };
  return segment.clips
    .filter((clip) => !clip.missing)
    .map((clip) => {
      let work = 0;
      let longest = spans[0];
      for (const span of spans) {
        if (span.fromMm !== clip.stationMm && span.toMm !== clip.stationMm) continue;
        work += rubWork(span.drive, meeting) / 2;
        if (!longest || span.drive.spanMm > longest.drive.spanMm) longest = span;
      }
      const mass = factor * work * readAt(run, run.wear, clip.stationMm);
      const inLongest = longest ? (longest.fromMm + longest.toMm) / 2 : clip.stationMm;
      return {
        cause: 'clip-edge',
        mechanism: 'vibration',
        thing: clip.id,
        figures: spanFigures(run, inLongest),
        ...massAt(run, clip.stationMm, mass),
      };
    });
}
