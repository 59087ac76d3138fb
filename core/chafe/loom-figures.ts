import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import type { Bundle } from '../wire/bundle.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';
import { runContext, spanHeld } from './run-context.ts';
import { runSurroundings } from './run-surroundings.ts';
import { beamSagMm, firstModeHz, heldSagMm } from './span-mechanics.ts';

/** A figure for wires that slip on each other freely, for what the model takes, and for one solid rod. */
export interface Bounded {
  readonly slipping: number;
  readonly mean: number;
  readonly stuck: number;
}

/** What a span does, its stiffness being anything between the bounds. */
export interface SpanFigures {
  readonly fromMm: number;
  readonly toMm: number;
  readonly spanMm: number;
  /** What holds it, as a person would say it. */
  readonly held: ReturnType<typeof spanHeld>;
  readonly hz: Bounded;
  /** Sag under its own weight at mid-span, spare loom left out. */
  readonly sagMm: Bounded;
}

/** The loom of a run as the model takes it, with the bounds of what is not known. */
export interface LoomFigures {
  readonly bundle: Bundle;
  /** Wires of the bundle that nobody traced. */
  readonly assumedWires: number;
  readonly diameterGiven: boolean;
  readonly spans: readonly SpanFigures[];
}

/**
 * The bundle of a run and its spans, to be shown: mass, diameter, and stiffness, frequency and sag from fully
 * slipping to stuck; null for a run half drawn. Formulas as `bundleOf`, `firstModeHz` and `beamSagMm`.
 * @example
 * loomFigures(sample.map, sample.middle).spans[0].hz.mean // => 1.9834
 */
export function loomFigures(
  map: MapDocument,
  segment: Segment,
  assumptions: ChafeAssumptions = defaultAssumptions,
): LoomFigures | null {
  const around = runSurroundings(map, segment, assumptions);
  if (!around) return null;
  const run = runContext(segment, around, assumptions);
  const { through, spans } = run;
  const { bundle, assumedWires, diameterGiven } = through;
  const { support } = assumptions.ride;
  const bounded = (figure: (stiffnessNMm2: number) => number): Bounded => ({
    slipping: figure(bundle.stiffnessNMm2.slipping),
    mean: figure(bundle.stiffnessNMm2.mean),
    stuck: figure(bundle.stiffnessNMm2.stuck),
  });
  return {
    bundle,
    assumedWires,
    diameterGiven,
    spans: spans.map(({ fromMm, toMm, drive, drive: { spanMm } }) => ({
      fromMm,
      toMm,
      spanMm,
      held: spanHeld(run, { fromMm, toMm, drive }),
      hz: bounded((stiffnessNMm2) =>
        firstModeHz({ kgPerMetre: bundle.kgPerMetre, stiffnessNMm2 }, spanMm, support),
      ),
      sagMm: bounded((stiffnessNMm2) =>
        heldSagMm(beamSagMm({ kgPerMetre: bundle.kgPerMetre, stiffnessNMm2 }, spanMm, support), spanMm),
      ),
    })),
  };
}
