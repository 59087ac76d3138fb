import type { FaultClass } from '../map/kinds.ts';
import type { WireLayout } from './circuit-network.ts';
import type { MeteredCircuit } from './metered-circuit.ts';
import type { NetNode } from './network.ts';
import type { LadderPlaces } from './wire-ladder.ts';

/**
 * What a fault of any strength does to one reading, for a row of stations: the meter shows
 * `sound - numerator[i] / (theta + offset[i])`, in displayed units. Theta is the fault's resistance in
 * ohm for shorts, and its conductance in siemens for series faults and opens.
 */
export interface FaultResponse {
  readonly sound: number;
  readonly numerator: Float64Array;
  readonly offset: Float64Array;
}

/**
 * Whether a class puts its fault in the wire's own path, so that theta is a conductance.
 * @example
 * isSeriesClass('open') // => true
 */
export function isSeriesClass(faultClass: FaultClass): boolean {
  return faultClass === 'open' || faultClass === 'high-resistance';
}

/**
 * Response of a reading to a fault of one class at stations of the searched wire, by the rank-one change
 * of the solved circuit (Sherman and Morrison; in circuits the compensation theorem, Tinney 1972, from
 * memory). For wire-to-wire with a known second wire, `otherPlaces` gives the touching place on it;
 * a link of -1 where the wires do not run together: no effect there. O(stations).
 * @example
 * faultResponse(meterConnected({ mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, ['node:west']), sample.circuit), other: null }, { test: 'ohms', from: { on: 'wire', nodeId: 'node:west' }, to: { on: 'body' }, ohms: 70 }, withEndsApart(bareState, sample.circuit.ends), typicalSupply), 'short-to-ground', placesOnLadder(layLadder(sample.map, sample.line, []), [250])).offset[0] // => 9.9996e6
 */
export function faultResponse(
  metered: MeteredCircuit,
  faultClass: FaultClass,
  places: LadderPlaces,
  otherPlaces: LadderPlaces | null = null,
): FaultResponse {
  const { network } = metered;
  if (isSeriesClass(faultClass)) return seriesResponse(metered, places);
  const partner: Partner =
    faultClass === 'short-to-ground'
      ? { node: 0 }
      : faultClass === 'short-to-supply'
        ? { node: network.railNode }
        : otherPlaces && network.other
          ? { wire: network.other, places: otherPlaces }
          : { node: network.neighbourNode ?? 0 };
  return shuntResponse(metered, places, partner);
}

/**
 * Reading of the sound circuit in displayed units.
 * @example
 * soundReading({ solution: Float64Array.of(5, 3), plus: 1, minus: 2, unitsPerVolt: 1 }) // => 2
 */
export function soundReading(
  metered: Pick<MeteredCircuit, 'solution' | 'plus' | 'minus' | 'unitsPerVolt'>,
): number {
  const volts = (node: NetNode): number => (node === 0 ? 0 : (metered.solution[node - 1] as number));
  return metered.unitsPerVolt * (volts(metered.plus) - volts(metered.minus));
}

/** What the searched wire touches. */
type Partner = { readonly node: NetNode } | { readonly wire: WireLayout; readonly places: LadderPlaces };

/** A point within a link: `share` of the way (by ohms) from node `p` to node `q`. */
interface Tap {
  readonly p: NetNode;
  readonly q: NetNode;
  readonly share: number;
  readonly ohms: number;
}

function tapOn(metered: MeteredCircuit, wire: WireLayout, places: LadderPlaces, i: number): Tap | null {
  const link = places.link[i] as number;
  if (link < 0) return null;
  const branch = metered.network.branches[wire.branchOf[link] as number];
  const p = wire.firstNode + link;
  return { p, q: p + 1, share: places.share[i] as number, ohms: branch?.ohms ?? 0 };
}

function shuntResponse(metered: MeteredCircuit, places: LadderPlaces, partner: Partner): FaultResponse {
  const { inverse, size, solution, transfer: perAmp, unitsPerVolt, network } = metered;
  const z = (n: NetNode, m: NetNode): number =>
    n === 0 || m === 0 ? 0 : (inverse[(n - 1) * size + m - 1] as number);
  // Per node: its volts, and what one ampere into it adds between the meter's leads.
  const volts = new Float64Array(network.nodeCount + 1);
  const transfer = new Float64Array(network.nodeCount + 1);
  for (let n = 1; n <= network.nodeCount; n++) {
    volts[n] = solution[n - 1] as number;
    transfer[n] = perAmp[n - 1] as number;
  }
  const along = (values: Float64Array, { p, q, share }: Tap): number =>
    (1 - share) * (values[p] as number) + share * (values[q] as number);
  const mutual = (x: Tap, k: Tap): number =>
    (1 - x.share) * ((1 - k.share) * z(x.p, k.p) + k.share * z(x.p, k.q)) +
    x.share * ((1 - k.share) * z(x.q, k.p) + k.share * z(x.q, k.q));
  const own = (x: Tap): number => mutual(x, x) + x.share * (1 - x.share) * x.ohms;
  const count = places.link.length;
  const numerator = new Float64Array(count);
  const offset = new Float64Array(count);
  const fixed: Tap | null =
    'node' in partner ? { p: partner.node, q: partner.node, share: 0, ohms: 0 } : null;
  for (let i = 0; i < count; i++) {
    const x = tapOn(metered, network.main, places, i);
    const k = 'node' in partner ? fixed : tapOn(metered, partner.wire, partner.places, i);
    offset[i] = 1;
    if (!x || !k) continue;
    const zMeterFault = along(transfer, x) - along(transfer, k);
    numerator[i] = unitsPerVolt * zMeterFault * (along(volts, x) - along(volts, k));
    offset[i] = own(x) - 2 * mutual(x, k) + own(k);
  }
  return { sound: soundReading(metered), numerator, offset };
}

/** A resistance put into a branch changes one diagonal entry of the equations, so no place within a link differs. */
function seriesResponse(metered: MeteredCircuit, places: LadderPlaces): FaultResponse {
  const count = places.link.length;
  const numerator = new Float64Array(count);
  const offset = new Float64Array(count).fill(1);
  for (let i = 0; i < count; i++) {
    const link = places.link[i] as number;
    if (i > 0 && places.link[i - 1] === link) {
      numerator[i] = numerator[i - 1] as number;
      offset[i] = offset[i - 1] as number;
      continue;
    }
    const at = linkResponse(metered, link);
    numerator[i] = at.numerator;
    offset[i] = at.offset;
  }
  return { sound: soundReading(metered), numerator, offset };
}

/**
 * Response of a reading to a resistance put in series into one link (wire or plug contact):
 * `sound - numerator / (1 / ohms + offset)`. A parted plug's contact changes nothing.
 * @example
 * linkResponse(meterConnected({ mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, ['node:west', 'node:far']), sample.circuit), other: null }, { test: 'ohms', from: { on: 'wire', nodeId: 'node:west' }, to: { on: 'wire', nodeId: 'node:far' }, ohms: 0.1 }, withEndsApart(bareState, sample.circuit.ends), typicalSupply), 1).numerator // => -1
 */
export function linkResponse(
  metered: MeteredCircuit,
  link: number,
): { readonly numerator: number; readonly offset: number } {
  const { inverse, size, solution, transfer, unitsPerVolt, network } = metered;
  const branch = network.main.branchOf[link] as number;
  if (branch < 0) return { numerator: 0, offset: 1 };
  const row = network.nodeCount + branch;
  return {
    numerator: -unitsPerVolt * (transfer[row] as number) * (solution[row] as number),
    offset: -(inverse[row * size + row] as number),
  };
}
