import type { HazardField } from '#core/chafe/hazard-field.ts';
import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { FaultClass } from '#core/map/kinds.ts';
import type { Draw } from '#tests/generated/draw.ts';

/**
 * Where the fault of one car really is, which is not what the model says: the model's hazard under
 * heavy-tailed noise by kind of cause, by thing and by place; rub spots nobody mapped; some faults
 * anywhere; and lengths that are wrong. The noise comes to a factor of about three in all, with tails. The
 * figures are judgement about how wrong a map and a hazard model are; no source.
 */
export const truthFigures = {
  /** Spread (natural log) of how much worse one kind of cause is on this car than the model says. */
  kindSpread: 0.5,
  /** The same for each single thing and for each piece of loom of 150 mm; Student's t, 3 degrees. */
  thingSpread: 0.5,
  placeSpread: 0.35,
  placeMm: 150,
  /** Share of faults at rub spots that nobody mapped, least and most; and anywhere. */
  unmapped: [0.05, 0.25],
  anywhere: 0.1,
  /** One-sigma error of a run's length. */
  lengthError: 0.05,
} as const;

/** Chance of the fault in each cell of the circuit on this one car; adds up to one. */
export function trueFault(
  draw: Draw,
  line: CircuitLine,
  field: HazardField,
  kind: FaultClass,
): Float64Array<ArrayBuffer> {
  const edges = field.cellEdgesMm;
  const cellCount = edges.length - 1;
  const mapped = normalised(noisyHazard(draw, field, kind));
  const unmapped = normalised(unmappedSpots(draw, edges));
  const unmappedShare = draw.between(truthFigures.unmapped[0], truthFigures.unmapped[1]);
  const mappedShare = 1 - truthFigures.anywhere - unmappedShare;
  const chance = new Float64Array(cellCount);
  for (let i = 0; i < cellCount; i++) {
    const even = cellMm(edges, i) / line.lengthMm;
    chance[i] =
      mappedShare * (mapped[i] as number) +
      unmappedShare * (unmapped[i] as number) +
      truthFigures.anywhere * even;
  }
  return normalised(withWrongLengths(draw, line, edges, chance));
}

const cellMm = (edges: Float64Array, i: number): number => (edges[i + 1] as number) - (edges[i] as number);

function normalised(values: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const sum = values.reduce((a, b) => a + b, 0);
  return sum > 0 ? values.map((value) => value / sum) : values.fill(1 / values.length);
}

/** A standard normal (Box and Muller 1958, from memory) and Student's t of 3 degrees of freedom. */
const normal = ({ chance }: Draw): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
const heavy = (draw: Draw): number =>
  normal(draw) / Math.sqrt((normal(draw) ** 2 + normal(draw) ** 2 + normal(draw) ** 2) / 3);

function noisyHazard(draw: Draw, field: HazardField, kind: FaultClass): Float64Array<ArrayBuffer> {
  const edges = field.cellEdgesMm;
  const cellCount = edges.length - 1;
  const known = new Float64Array(cellCount);
  const noisy = new Float64Array(cellCount);
  const kinds = new Map<string, number>();
  for (const { cause, firstCell, perMm } of field.causes) {
    const ofKind = kinds.get(cause) ?? Math.exp(truthFigures.kindSpread * normal(draw));
    kinds.set(cause, ofKind);
    const factor = ofKind * Math.exp(truthFigures.thingSpread * heavy(draw));
    perMm.forEach((density, i) => {
      known[firstCell + i] = (known[firstCell + i] as number) + density;
      noisy[firstCell + i] = (noisy[firstCell + i] as number) + density * factor;
    });
  }
  const placeNoise = new Map<number, number>();
  return Float64Array.from({ length: cellCount }, (_, i) => {
    const place = Math.floor((edges[i] as number) / truthFigures.placeMm);
    const here = placeNoise.get(place) ?? Math.exp(truthFigures.placeSpread * heavy(draw));
    placeNoise.set(place, here);
    const ratio = (known[i] as number) > 0 ? (noisy[i] as number) / (known[i] as number) : 0;
    return (field.byClass[kind][i] as number) * ratio * here * cellMm(edges, i);
  });
}

function unmappedSpots(draw: Draw, edges: Float64Array): Float64Array<ArrayBuffer> {
  const lengthMm = edges[edges.length - 1] as number;
  const mass = new Float64Array(edges.length - 1);
  const count = 1 + Math.floor((lengthMm / 3_000) * 2 * draw.chance());
  for (let spot = 0; spot < count; spot++) {
    const at = draw.chance() * lengthMm;
    const reachMm = draw.between(20, 80);
    const weight = Math.exp(normal(draw));
    for (let i = 0; i < mass.length; i++) {
      const away = ((edges[i] as number) + cellMm(edges, i) / 2 - at) / reachMm;
      mass[i] = (mass[i] as number) + weight * Math.exp(-0.5 * away * away) * cellMm(edges, i);
    }
  }
  return mass;
}

/** Each run is really longer or shorter than drawn, so that what lies at a station lies elsewhere. */
function withWrongLengths(
  draw: Draw,
  line: CircuitLine,
  edges: Float64Array,
  chance: Float64Array,
): Float64Array<ArrayBuffer> {
  const moved = new Float64Array(chance.length);
  let cell = 0;
  for (const { fromMm, toMm } of line.spans) {
    const first = cell;
    while (cell < chance.length && (edges[cell] as number) < toMm - 1e-6) cell++;
    const cells = cell - first;
    const factor = 1 + truthFigures.lengthError * normal(draw);
    for (let i = 0; i < cells; i++) {
      const middle = (edges[first + i] as number) + cellMm(edges, first + i) / 2 - fromMm;
      const share = Math.min(0.999999, Math.max(0, (middle * factor) / (toMm - fromMm)));
      const to = first + Math.floor(share * cells);
      moved[to] = (moved[to] as number) + (chance[first + i] as number);
    }
  }
  return moved;
}
