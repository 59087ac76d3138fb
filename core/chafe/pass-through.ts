import type { MapNode } from '../map/records.ts';
import { massAt, readAt } from './mass-at.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { rubWork } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';
import type { Span } from './span.ts';

/**
 * Where a run ends at a grommet it passes a raw hole that the grommet covers; what the grommet leaves of
 * the edge works on the last bit of loom. A hole without its grommet is drawn as a raw edge.
 * @example
 * passThroughHazards(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions)) // => []
 */
export function passThroughHazards(run: RunContext): readonly MechanismHazard[] {
  const { from, to, line } = run.around.shape;
  const first = run.spans[0];
  const last = run.spans[run.spans.length - 1];
  return [...(first ? atEnd(run, from, 0, first) : []), ...(last ? atEnd(run, to, line.lengthMm, last) : [])];
}

function atEnd(run: RunContext, node: MapNode, stationMm: number, span: Span): MechanismHazard[] {
  if (node.kind !== 'grommet') return [];
  const { baseRates, surfaceSeverity, motionAtClip, clearanceSigmaMm, hole } = run.assumptions;
  const edge = surfaceSeverity.hole * surfaceSeverity.grommetFactor;
  const factor = baseRates.vibration * 3600 * edge * (hole.lengthMm / 2) * causeFactor(run, 'pass-through');
  const meeting = { clearanceMm: hole.gapMm, shape: motionAtClip, tauMm: clearanceSigmaMm, forceN: 0 };
  const mass = factor * rubWork(span.drive, meeting) * readAt(run, run.wear, stationMm);
  return [
    {
      cause: 'pass-through',
      mechanism: 'vibration',
      thing: node.id,
      figures: { ...spanFigures(run, (span.fromMm + span.toMm) / 2), clearanceMm: hole.gapMm },
      ...massAt(run, stationMm, mass),
    },
  ];
}
