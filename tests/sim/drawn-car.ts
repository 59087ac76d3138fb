import { hazardAlong } from '#core/chafe/hazard-along.ts';
import type { HazardField } from '#core/chafe/hazard-field.ts';
import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import type { FailureType } from '#core/job/job-document.ts';
import { cumulate, probabilityWithin } from '#core/locate/cumulative.ts';
import type { BodyStyle, FaultClass } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit } from '#core/map/records.ts';
import { seededChance } from '#core/quantity/chance.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { type Draw, drawFrom } from '#tests/generated/draw.ts';
import { randomVehicle } from './random-vehicle.ts';
import { trueFault } from './true-fault.ts';

/** One invented car with its fault, and what is known before anybody opens or measures anything. */
export interface DrawnCar {
  readonly map: MapDocument;
  readonly circuit: Circuit;
  readonly line: CircuitLine;
  readonly field: HazardField;
  readonly kind: FaultClass;
  /** What the report says; 'not-known' where it is vague. */
  readonly failureType: FailureType;
  /** True chance of the fault in each cell, given what the plug test showed. */
  readonly truth: Float64Array;
  /** A plug parted beforehand while the symptom was watched, and whether it stayed. */
  readonly plugTest: { readonly nodeId: NodeId; readonly stationMm: number; readonly stays: boolean } | null;
  /** Where a plug can be reached without trim; one of which nothing was learned where the fault is no short. */
  readonly plugMm: number | null;
  /** Chance that a look at the true place notices the fault. */
  readonly lookQuality: number;
}

/** How often each class of fault comes, and the failure type that goes with it (judgement, no source). */
const classes: readonly (readonly [FaultClass, number, FailureType])[] = [
  ['short-to-ground', 0.5, 'circuit-short-to-ground'],
  ['open', 0.28, 'circuit-open'],
  ['high-resistance', 0.16, 'circuit-resistance-above-threshold'],
  ['short-to-supply', 0.06, 'circuit-short-to-battery'],
];

/** Classes whose symptom goes when the wire beyond a plug is cut off. */
export const shorts: readonly FaultClass[] = ['short-to-ground', 'short-to-supply'];

/** Reports that say nothing; and plug tests whose outcome is misread (judgement). */
const vagueShare = 0.15;
export const misreadShare = 0.03;

/**
 * Draws a car and its fault. Where a short is searched and a plug can be reached without trim, it is
 * parted and the symptom watched before anyone opens anything; whoever searches knows its outcome.
 */
export function drawnCar(seed: number, shape: BodyStyle): DrawnCar {
  const draw = drawFrom(seededChance(seed));
  const { map, circuit } = randomVehicle(draw, shape);
  const laid = layStraight(map, circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  const line = laid.value;
  const field = hazardAlong(map, line);
  const [kind, , failureType] = pickClass(draw.chance());
  const drawn = trueFault(draw, line, field, kind);
  const plug = line.nodes.find(
    ({ nodeId }) =>
      map.nodes.get(nodeId)?.kind === 'inline-connector' && map.nodes.get(nodeId)?.panelIds.length === 0,
  );
  const { truth, stays } =
    plug && shorts.includes(kind)
      ? plugTested(draw, field.cellEdgesMm, drawn, plug.stationMm)
      : { truth: drawn, stays: null };
  return {
    map,
    circuit,
    line,
    field,
    kind,
    failureType: draw.happens(vagueShare) ? 'not-known' : failureType,
    truth,
    plugTest: plug && stays !== null ? { ...plug, stays } : null,
    plugMm: plug?.stationMm ?? null,
    lookQuality: draw.between(0.75, 0.97),
  };
}

function pickClass(chance: number): (typeof classes)[number] {
  let left = chance;
  for (const each of classes) {
    left -= each[1];
    if (left < 0) return each;
  }
  return classes[0] as (typeof classes)[number];
}

function plugTested(
  draw: Draw,
  edges: Float64Array,
  drawn: Float64Array<ArrayBuffer>,
  stationMm: number,
): { truth: Float64Array<ArrayBuffer>; stays: boolean } {
  const before = probabilityWithin(cumulate(edges, drawn), { fromMm: 0, toMm: stationMm });
  const stays = draw.happens(before * (1 - misreadShare) + (1 - before) * misreadShare);
  const told = drawn.map((p, i) => {
    const isBefore = ((edges[i] as number) + (edges[i + 1] as number)) / 2 < stationMm;
    return p * (isBefore === stays ? 1 - misreadShare : misreadShare);
  });
  const sum = told.reduce((a, b) => a + b, 0);
  return { truth: told.map((p) => p / sum), stays };
}
