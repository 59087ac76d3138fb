import type { CircuitLine, CircuitSpan } from '../circuit/circuit-line.ts';
import { type FaultClass, faultClasses } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import { assert } from '../quantity/assert.ts';
import { samePlaceMm } from '../quantity/tolerance.ts';
import { type ChafeAssumptions, defaultAssumptions } from './chafe-assumptions.ts';
import type { Mechanism } from './class-split.ts';
import type { HazardCause, HazardField } from './hazard-field.ts';
import { jointHazard } from './joint-hazard.ts';
import { stationsOfJoints } from './joints-of-line.ts';
import type { MechanismHazard } from './mechanism-hazard.ts';
import { type SegmentHazard, segmentHazard } from './segment-hazard.ts';
import { type CellBell, cellBell, foldedCell } from './smooth-cells.ts';

/** A span of the circuit with its run's hazard and the first of its cells. */
interface LaidSpan {
  readonly span: CircuitSpan;
  readonly hazard: SegmentHazard;
  readonly firstCell: number;
}

/**
 * Relative hazard along a traced circuit for the circuit's own wire: every run's hazard turned the way the
 * circuit goes and set per mm of wire, drawn places spread by the doubt of where they are, over run
 * ends too, and joints in the cells beside their node. What nobody mapped is not in it: the even floor that
 * stands for that belongs to the prior (`core/locate`), once. O(cells x causes near).
 * @example
 * hazardAlong(sample.map, sample.line).cellEdgesMm.length // => 151
 */
export function hazardAlong(
  map: MapDocument,
  line: CircuitLine,
  assumptions: ChafeAssumptions = defaultAssumptions,
): HazardField {
  const laid: LaidSpan[] = [];
  let cellCount = 0;
  for (const span of line.spans) {
    const hazard = segmentHazard(map, span.segment, assumptions, line.circuit);
    assert(hazard, 'a circuit laid straight has shaped runs');
    laid.push({ span, hazard, firstCell: cellCount });
    cellCount += hazard.cellCount;
  }
  const field = new FieldUnderWay(edgesOf(laid, cellCount), assumptions);
  for (const each of laid) {
    for (const cause of each.hazard.causes) {
      const inPlace = turned(each, cause);
      field.add(cause.mechanism, cause.placed ? field.spread(inPlace) : inPlace);
    }
  }
  addJoints(map, line, assumptions, field);
  return field.finished();
}

function edgesOf(laid: readonly LaidSpan[], cellCount: number): Float64Array {
  const edges = new Float64Array(cellCount + 1);
  for (const { span, hazard, firstCell } of laid) {
    const cellMm = (span.toMm - span.fromMm) / hazard.cellCount;
    for (let i = 0; i < hazard.cellCount; i++) edges[firstCell + i] = span.fromMm + i * cellMm;
    edges[firstCell + hazard.cellCount] = span.toMm;
  }
  return edges;
}

function turned({ span, hazard, firstCell }: LaidSpan, cause: MechanismHazard): HazardCause {
  const drawnPerWire = hazard.lengthMm / (span.toMm - span.fromMm);
  const perMm = Float64Array.from(cause.perMm, (density) => density * drawnPerWire);
  if (span.reversed) perMm.reverse();
  const first = span.reversed ? hazard.cellCount - cause.firstCell - perMm.length : cause.firstCell;
  return {
    cause: cause.cause,
    thing: cause.thing,
    figures: cause.figures,
    firstCell: firstCell + first,
    perMm,
  };
}

/** Adds each joint's hazard in equal parts to the cells that meet at it, those of branches too. */
function addJoints(
  map: MapDocument,
  line: CircuitLine,
  assumptions: ChafeAssumptions,
  field: FieldUnderWay,
): void {
  for (const [nodeId, stations] of stationsOfJoints(line)) {
    const node = map.nodes.get(nodeId);
    const rate = node ? jointHazard(map, node, assumptions) : 0;
    if (rate === 0) continue;
    const cells = stations.map(({ stationMm, side }) => field.cellBeside(stationMm, side));
    const share = (cell: number) => rate / cells.length / field.cellMm(cell);
    for (const [first, end] of rowsOf(cells)) {
      const perMm = Float64Array.from({ length: end - first }, (_, i) => share(first + i));
      field.add('joint', { cause: 'joint', thing: nodeId, figures: {}, firstCell: first, perMm });
    }
  }
}

/** Cells one after another, as their first and the one after their last. */
function rowsOf(cells: readonly number[]): readonly (readonly [number, number])[] {
  const rows: [number, number][] = [];
  for (const cell of [...new Set(cells)].sort((a, b) => a - b)) {
    const last = rows[rows.length - 1];
    if (last?.[1] === cell) last[1] = cell + 1;
    else rows.push([cell, cell + 1]);
  }
  return rows;
}

/** The field while causes are still being added to it. */
class FieldUnderWay {
  readonly #edgesMm: Float64Array;
  readonly #assumptions: ChafeAssumptions;
  readonly #byClass: Record<FaultClass, Float64Array>;
  readonly #causes: HazardCause[] = [];
  readonly #bells = new Map<number, CellBell>();
  constructor(edgesMm: Float64Array, assumptions: ChafeAssumptions) {
    this.#edgesMm = edgesMm;
    this.#assumptions = assumptions;
    const entries = faultClasses.map((kind) => [kind, new Float64Array(edgesMm.length - 1)]);
    this.#byClass = Object.fromEntries(entries) as Record<FaultClass, Float64Array>;
  }

  get cellCount(): number {
    return this.#edgesMm.length - 1;
  }

  cellMm(cell: number): number {
    return (this.#edgesMm[cell + 1] as number) - (this.#edgesMm[cell] as number);
  }

  /** The cell that ends, or begins, at a station that is a border of cells. */
  cellBeside(stationMm: number, side: 'before' | 'after'): number {
    let [low, high] = [0, this.cellCount];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#edgesMm[middle] as number) < stationMm - samePlaceMm) low = middle + 1;
      else high = middle;
    }
    return side === 'before' ? low - 1 : low;
  }

  /** Moves each cell's hazard by a bell to its neighbours; what would leave the circuit folds back. */
  spread(cause: HazardCause): HazardCause {
    const { firstCell, perMm } = cause;
    let reach = 0;
    for (let i = 0; i < perMm.length; i++) reach = Math.max(reach, this.#bellOf(firstCell + i).length - 1);
    const first = Math.max(0, firstCell - reach);
    const last = Math.min(this.cellCount - 1, firstCell + perMm.length - 1 + reach);
    const spread = new Float64Array(last - first + 1);
    for (let i = 0; i < perMm.length; i++) {
      const mass = (perMm[i] as number) * this.cellMm(firstCell + i);
      if (mass > 0) this.#spreadCell(firstCell + i, mass, first, spread);
    }
    return { ...cause, firstCell: first, perMm: spread };
  }

  #bellOf(cell: number): CellBell {
    const cellMm = this.cellMm(cell);
    let bell = this.#bells.get(cellMm);
    if (!bell) {
      bell = cellBell(cellMm, this.#assumptions.placeSigmaMm);
      this.#bells.set(cellMm, bell);
    }
    return bell;
  }

  #spreadCell(cell: number, mass: number, first: number, spread: Float64Array): void {
    const bell = this.#bellOf(cell);
    for (let k = 1 - bell.length; k < bell.length; k++) {
      const to = foldedCell(cell + k, this.cellCount);
      const share = bell[Math.abs(k)] as number;
      spread[to - first] = (spread[to - first] as number) + (mass * share) / this.cellMm(to);
    }
  }

  add(mechanism: Mechanism, cause: HazardCause): void {
    const split = this.#assumptions.classSplit[mechanism];
    for (const kind of faultClasses) {
      const share = split[kind];
      const density = this.#byClass[kind];
      for (let i = 0; i < cause.perMm.length; i++) {
        const cell = cause.firstCell + i;
        density[cell] = (density[cell] as number) + share * (cause.perMm[i] as number);
      }
    }
    this.#causes.push(cause);
  }

  finished(): HazardField {
    return { cellEdgesMm: this.#edgesMm, byClass: this.#byClass, causes: this.#causes };
  }
}
