import { type CircuitLine, lineEnds } from '#core/circuit/circuit-line.ts';
import {
  type InjectionPlan,
  type InjectionRefusal,
  mostInjectionA,
  safeInjection,
} from '#core/circuit/safe-injection.ts';
import { partsOnLeads } from '#core/circuit/usable-readings.ts';
import { currentCarryingA } from '#core/circuit/wire-current-table.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import type { Circuit } from '#core/map/records.ts';
import type { NodeId } from '#core/quantity/id.ts';
import type { ReadingForm } from './reading-form.ts';

/** Something to know before this test is done, or done again. */
export type FormCaution =
  /** Ohms, beep or capacitance with the battery on the wire. */
  | { readonly code: 'battery-on' }
  /** A part or control unit still on the wire answers for it. */
  | { readonly code: 'end-plugged-in'; readonly nodeIds: readonly NodeId[] }
  | { readonly code: 'injection-refused'; readonly reason: InjectionRefusal }
  /** How current is put in without harm. */
  | { readonly code: 'injection-plan'; readonly plan: InjectionPlan }
  /** Control unit pins: measure from the back of the plug. */
  | { readonly code: 'unit-pins' }
  /** Things may move and get hot under the hand. */
  | { readonly code: 'hands-clear' };

const unitEnds: ReadonlySet<Circuit['ends'][number]['kind']> = new Set([
  'module-input-pull-up',
  'high-side-driver',
  'low-side-driver',
  'sensor',
]);

/** The cautions of a test as the car stands, worst first. */
export function formCautions(form: ReadingForm, line: CircuitLine): readonly FormCaution[] {
  const { circuit, branches } = line;
  const { state, test } = form;
  const cautions: FormCaution[] = [];
  const onDeadWire = test === 'ohms' || test === 'beep' || test === 'capacitance';
  if (onDeadWire && state.batteryConnected) cautions.push({ code: 'battery-on' });
  if (onDeadWire) {
    // Beyond a parted plug nothing answers for the wire that the leads are on.
    const leads = test === 'capacitance' ? [form.from] : [form.from, form.to];
    const nodeIds = partsOnLeads(line, leads, state)
      .filter(({ kind }) => kind !== 'ground-point' && kind !== 'other')
      .flatMap(({ nodeId }) => (nodeId !== null && !state.apartNodeIds.includes(nodeId) ? [nodeId] : []));
    if (nodeIds.length > 0) cautions.push({ code: 'end-plugged-in', nodeIds });
  }
  if (test === 'drop') {
    const answer = safeInjection(circuit, state, { joined: branches });
    cautions.push(
      answer.outcome === 'allowed'
        ? { code: 'injection-plan', plan: answer.plan }
        : { code: 'injection-refused', reason: answer.reason },
    );
  }
  const atLeads = test === 'volts' || onDeadWire || test === 'drop';
  if (atLeads && lineEnds(line).some(({ kind }) => unitEnds.has(kind))) cautions.push({ code: 'unit-pins' });
  if ((test === 'move' || test === 'function') && state.ignitionOn) cautions.push({ code: 'hands-clear' });
  return cautions;
}

/** No lamp at a fuse passes more, and no reading takes more, in ampere. */
const mostLampA = 20;

/** The most current a drop test on this circuit may have been done with, in ampere: lamp at the fuse, or limited supply. */
export function mostDropCurrentA(circuit: Circuit): number {
  if (!circuit.ends.some((end) => end.kind === 'fused-supply')) return mostInjectionA;
  return Math.min(mostLampA, circuit.fuseA ?? mostLampA, currentCarryingA(circuit.conductorMm2));
}

/** Why a circuit takes no reading at all; null where it does. */
export function noReadings(circuit: Circuit): 'restraint' | 'high-voltage' | null {
  return isLookOnly(circuit.duty) ? circuit.duty : null;
}

/** Whether current may be put into wires of this duty at all. */
export function takesCurrent(circuit: Circuit): boolean {
  return circuit.duty === 'ordinary';
}
