import type { MechanismHazard } from './mechanism-hazard.ts';
import { rubWorkAcross, type Surface } from './rub-work.ts';
import { causeFactor, type RunContext, spanFigures } from './run-context.ts';

/**
 * Every loom lies along painted body or a trim's back; each span rubs on it as hard as it can move. One
 * cause a span, so that each can be named with its own clip gap.
 * @example
 * bareBodyHazards(runContext(sample.segment, runSurroundings(sample.map, sample.segment, defaultAssumptions), defaultAssumptions)).length // => 3
 */
export function bareBodyHazards(run: RunContext): readonly MechanismHazard[] {
  const { assumptions, cellCount, cellMm } = run;
  const { tightForceN, clearanceSigmaMm, baseRates, surfaceSeverity } = assumptions;
  const forceN = run.segment.traits.includes('drawn-tight') ? tightForceN : 0;
  const surface: Surface = { gapMm: 0, side: 'level', tauMm: clearanceSigmaMm, forceN };
  const factor = baseRates.vibration * 3600 * surfaceSeverity.body * causeFactor(run, 'bare-body');
  const hazards: MechanismHazard[] = [];
  for (const span of run.spans) {
    const fromMm = Math.max(0, span.fromMm);
    const toMm = Math.min(cellCount * cellMm, span.toMm);
    if (toMm <= fromMm) continue;
    const firstCell = Math.floor(fromMm / cellMm);
    const lastCell = Math.min(cellCount - 1, Math.ceil(toMm / cellMm) - 1);
    const perMm: number[] = [];
    for (let cell = firstCell; cell <= lastCell; cell++) {
      const from = Math.max(fromMm, cell * cellMm);
      const to = Math.min(toMm, (cell + 1) * cellMm);
      const middle = (from + to) / 2;
      const work = rubWorkAcross(span, middle, 0, surface, assumptions);
      const place = middle / cellMm - cell;
      const here = run.wear[cell] as number;
      const wear = here + ((run.wear[cell + 1] as number) - here) * place;
      perMm.push((factor * work * wear * (to - from)) / cellMm);
    }
    hazards.push({
      cause: 'bare-body',
      mechanism: 'vibration',
      thing: run.segment.id,
      figures: spanFigures(run, (fromMm + toMm) / 2),
      firstCell,
      perMm,
      placed: false,
    });
  }
  return hazards;
}
