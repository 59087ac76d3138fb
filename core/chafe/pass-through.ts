import type { MapNode } from '../map/records.ts';
import type { HazardSums } from './hazard-sums.ts';
import { addMass, readAt } from './mass-at.ts';
import { rubWork } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import type { Span } from './span.ts';

/**
 * Where a run ends at a grommet it passes a raw hole that the grommet covers; what the grommet leaves of
 * the edge works on the last bit of loom. A hole without its grommet is drawn as a raw edge.
 * @example
 * listedCauses(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions), [passThrough]) // => []
 */
export function passThrough(run: RunContext, sums: HazardSums): void {
  const { from, to, line } = run.around.shape;
  const { spans } = run;
  addAtEnd(run, sums, from, 0, spans[0] as Span);
  addAtEnd(run, sums, to, line.lengthMm, spans[spans.length - 1] as Span);
}

function addAtEnd(run: RunContext, sums: HazardSums, node: MapNode, stationMm: number, span: Span): void {
  if (node.kind !== 'grommet') return;
  const { baseRates, surfaceSeverity, motionAtClip, clearanceSigmaMm, hole } = run.assumptions;
  const edge = surfaceSeverity.hole * surfaceSeverity.grommetFactor;
  const factor = baseRates.vibration * 3600 * edge * (hole.lengthMm / 2) * causeFactor(run, 'pass-through');
  const meeting = { clearanceMm: hole.gapMm, shape: motionAtClip, tauMm: clearanceSigmaMm, forceN: 0 };
  const cells = sums.cellsOf({
    cause: 'pass-through',
    mechanism: 'vibration',
    thing: node.id,
    placed: true,
    figures: () => ({
      ...spanFigures(run, (span.fromMm + span.toMm) / 2),
      clearanceMm: hole.gapMm,
    }),
  });
  addMass(cells, run, stationMm, factor * rubWork(span.drive, meeting) * readAt(run, run.wear, stationMm));
}
