import { isLookOnly } from '../map/kinds.ts';
import type { CircuitEnd } from '../map/records.ts';
import type { CircuitId, NodeId } from '../quantity/id.ts';
import type { CapacitanceReading } from './capacitance-likelihood.ts';
import type { CircuitState, ElectricalReading, ProbePlace } from './car-state.ts';
import { type CircuitLine, lineEnds } from './circuit-line.ts';
import { typicalSupply } from './circuit-network.ts';
import { handMeter } from './default-meter-table.ts';
import { soundReading } from './fault-response.ts';
import type { Meter } from './meter.ts';
import {
  leadPoints,
  leadsOf,
  meterConnected,
  type ReadingWires,
  type TwoLeadReading,
} from './metered-circuit.ts';
import { outlierNats } from './shown-score.ts';
import {
  type EndPlace,
  endPlaces,
  isReached,
  placeOfNode,
  type ReachedPiece,
  reachedWire,
} from './wire-reach.ts';

/** One electrical reading as taken. */
export interface TakenReading {
  readonly reading: ElectricalReading;
  readonly state: CircuitState;
  /** A hand meter when absent. */
  readonly meter?: Meter | undefined;
}

/** Something about a reading the user should know; `reading` is its place in the list given. */
export type ReadingNote =
  | { readonly code: 'lead-not-on-circuit'; readonly reading: number; readonly nodeId: NodeId }
  | { readonly code: 'other-circuit-unknown'; readonly reading: number; readonly circuitId: CircuitId }
  | { readonly code: 'live-while-measured'; readonly reading: number; readonly volts: number }
  | { readonly code: 'end-part-plugged-in'; readonly reading: number; readonly nodeId: NodeId | null }
  | { readonly code: 'switch-position-assumed-open'; readonly reading: number }
  | { readonly code: 'forbidden-duty'; readonly reading: number }
  | { readonly code: 'neighbour-assumed' };

/** A two-lead reading that can be reasoned about. */
export interface UsableReading {
  readonly index: number;
  readonly reading: TwoLeadReading;
  readonly state: CircuitState;
  readonly meter: Meter;
  /** The most it may count against a hypothesis, in nats. */
  readonly clip: number;
}

/** Readings sorted into what the circuit can use, with a note for each that it cannot or can only in part. */
export interface UsableReadings {
  readonly twoLead: readonly UsableReading[];
  readonly capacitance: readonly CapacitanceReading[];
  readonly notes: readonly ReadingNote[];
}

/** Volts on a wire above which ohms on it mean nothing. */
const liveVolts = 0.1;

/** An electronic pin can turn on under an ohmmeter; such a figure says little (judgement). */
const electronicPinNats = 2;

const electronicEnds: ReadonlySet<CircuitEnd['kind']> = new Set([
  'module-input-pull-up',
  'high-side-driver',
  'low-side-driver',
  'sensor',
]);

/**
 * Sorts readings: leaves out what sits on no known place, ohms on a live wire, and everything on a
 * restraint or high-voltage circuit; lowers the weight of ohms with an electronic part plugged in.
 * @example
 * usableReadings(sample.line, { mainId: sample.circuit.id, main: standingWire(layLadder(sample.map, sample.line, []), sample.circuit), other: null }, []).notes // => []
 */
export function usableReadings(
  line: CircuitLine,
  wires: ReadingWires,
  taken: readonly TakenReading[],
): UsableReadings {
  const twoLead: UsableReading[] = [];
  const capacitance: CapacitanceReading[] = [];
  const notes: ReadingNote[] = [];
  const { circuit } = line;
  const isForbidden = [circuit, ...line.branches.map((branch) => branch.circuit)].some(({ duty }) =>
    isLookOnly(duty),
  );
  taken.forEach(({ reading, state, meter = handMeter }, index) => {
    if (isForbidden) {
      notes.push({ code: 'forbidden-duty', reading: index });
      return;
    }
    const lost = misplacedLead(line, reading, index, wires);
    if (lost) {
      notes.push(lost);
      return;
    }
    const leads = reading.test === 'capacitance' ? [reading.at] : leadsOf(reading);
    const parts = partsOnLeads(line, leads, state);
    if (state.switchClosed === null && parts.some(({ kind }) => kind === 'switch-to-ground'))
      notes.push({ code: 'switch-position-assumed-open', reading: index });
    if (reading.test === 'capacitance') {
      const seen = wireSeen(line, reading.at, state);
      if (seen.pluggedIn)
        notes.push({ code: 'end-part-plugged-in', reading: index, nodeId: seen.pluggedIn.nodeId });
      else if (seen.seenMm) capacitance.push({ seenMm: seen.seenMm, picofarads: reading.picofarads, meter });
      return;
    }
    let clip = outlierNats;
    if (reading.test === 'ohms' || reading.test === 'beep') {
      const volts = leadVolts(wires, reading, state);
      if (Math.abs(volts) > liveVolts) {
        notes.push({ code: 'live-while-measured', reading: index, volts });
        return;
      }
      const electronic = parts.find((end) => electronicEnds.has(end.kind));
      if (electronic) {
        clip = electronicPinNats;
        notes.push({ code: 'end-part-plugged-in', reading: index, nodeId: electronic.nodeId });
      }
    }
    twoLead.push({ index, reading, state: standingFor(line, reading, state), meter, clip });
  });
  return { twoLead, capacitance, notes };
}

/**
 * A current driven in at a fused supply's end stands in the place of the fuse, lamp or limiter: whatever
 * the supply could send past it is not there, or the stated current would not be all there is.
 */
function standingFor(line: CircuitLine, reading: TwoLeadReading, state: CircuitState): CircuitState {
  if (reading.test !== 'drop' || reading.driven.on !== 'wire') return state;
  const { nodeId, circuitId } = reading.driven;
  const own = [line.circuit, ...line.branches.map(({ circuit }) => circuit)];
  const isOurs = circuitId === undefined || own.some(({ id }) => id === circuitId);
  const isFuse = lineEnds(line).some((end) => end.kind === 'fused-supply' && end.nodeId === nodeId);
  if (!isOurs || !isFuse || state.apartNodeIds.includes(nodeId)) return state;
  return { ...state, apartNodeIds: [...state.apartNodeIds, nodeId] };
}

function misplacedLead(
  line: CircuitLine,
  reading: ElectricalReading,
  index: number,
  wires: ReadingWires,
): ReadingNote | null {
  const leads = reading.test === 'capacitance' ? [reading.at] : leadsOf(reading);
  for (const lead of leads) {
    if (lead.on !== 'wire') continue;
    const { circuitId, nodeId } = lead;
    const isOther = circuitId !== undefined && circuitId === wires.other?.circuitId;
    const isBranch = line.branches.some(({ circuit }) => circuit.id === circuitId);
    if (circuitId !== undefined && circuitId !== wires.mainId && !isBranch && !isOther)
      return { code: 'other-circuit-unknown', reading: index, circuitId };
    const wire = isOther ? wires.other?.wire : wires.main;
    if (!wire || !leadPoints(wire.ladder, lead))
      return { code: 'lead-not-on-circuit', reading: index, nodeId };
  }
  return null;
}

/** Volts a sound wire would show between the leads of an ohms test as the car stood. */
function leadVolts(wires: ReadingWires, reading: TwoLeadReading, state: CircuitState): number {
  if (!state.batteryConnected) return 0;
  const [from, to] = leadsOf(reading);
  const metered = meterConnected(wires, { test: 'volts', from, to, volts: 0 }, state, typicalSupply);
  return metered ? soundReading(metered) : 0;
}

/** End parts that are plugged in, and where on the wire. */
function pluggedParts(line: CircuitLine, { apartNodeIds }: CircuitState): EndPlace[] {
  return endPlaces(line).filter(({ end }) => end.nodeId === null || !apartNodeIds.includes(end.nodeId));
}

/**
 * Parts at ends of the wire that are plugged in and reach a lead without a parted plug between; a lead on
 * a parted plug whose half nobody named may sit on either.
 * @example
 * partsOnLeads(sample.line, [{ on: 'wire', nodeId: 'node:west' }], { ...bareState, apartNodeIds: ['node:middle'] }).map(({ kind }) => kind) // => ['module-input-pull-up']
 */
export function partsOnLeads(
  line: CircuitLine,
  leads: readonly ProbePlace[],
  state: CircuitState,
): readonly CircuitEnd[] {
  const { apartNodeIds } = state;
  const reached = leads.flatMap((lead) => {
    const at = lead.on === 'wire' ? placeOfNode(line, lead) : null;
    const isApart = lead.on === 'wire' && apartNodeIds.includes(lead.nodeId);
    const side = lead.on === 'wire' && isApart ? lead.side : null;
    return at ? reachedWire(line, { ...at, side, apartNodeIds }) : [];
  });
  return pluggedParts(line, state).flatMap((part) => (isReached(reached, part) ? [part.end] : []));
}

/**
 * The wire a capacitance meter sees from a lead, in mm, broken at a station or (null) whole: up to the next
 * parted plugs or free ends; with the end part still plugged in, that spoils the figure.
 * @example
 * wireSeen(sample.line, { on: 'wire', nodeId: 'node:west' }, { ...bareState, apartNodeIds: ['node:west', 'node:far'] }).seenMm(null) // => 1500
 */
export function wireSeen(
  line: CircuitLine,
  lead: ProbePlace,
  state: CircuitState,
): {
  readonly seenMm: CapacitanceReading['seenMm'] | null;
  readonly pluggedIn: CircuitEnd | null;
} {
  const at = lead.on === 'wire' ? placeOfNode(line, lead) : null;
  if (!at || lead.on !== 'wire') return { seenMm: null, pluggedIn: null };
  const { apartNodeIds } = state;
  const isEnd = endPlaces(line).some(({ row, atMm }) => row === at.row && atMm === at.atMm);
  const isApart = apartNodeIds.includes(lead.nodeId) && !isEnd;
  const side = isApart ? (lead.side ?? (at.atMm > line.mainMm / 2 ? 'first-end' : 'second-end')) : null;
  const reached = (brokenMm?: number) => reachedWire(line, { ...at, side, apartNodeIds, brokenMm });
  const whole = reached();
  const lengthOf = (pieces: readonly ReachedPiece[]): number =>
    pieces.reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
  return {
    seenMm: (openMm) => lengthOf(openMm === null ? whole : reached(openMm)),
    pluggedIn: pluggedParts(line, state).find((part) => isReached(whole, part))?.end ?? null,
  };
}
