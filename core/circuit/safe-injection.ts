import type { Circuit } from '../map/records.ts';
import type { CircuitState } from './car-state.ts';
import { type LineBranch, lineEnds } from './circuit-line.ts';
import { currentCarryingA } from './wire-current-table.ts';

/** Current put into a signal wire unless there is reason for more, and the most that is ever offered. */
export const usualInjectionA = 0.1;
export const mostInjectionA = 0.5;

/** Most volts of an injecting supply. */
export const mostInjectionVolts = 12;

/** Longest an injection may stay on, in seconds, and the fuse in its lead, in ampere. */
export const longestInjectionS = 30;
export const injectionFuseA = 1;

/** A lamp used as a limiter, by its nominal figures; cold it passes more for a moment. */
export interface LimiterLamp {
  readonly watts: number;
  readonly volts: number;
}

/** Why no current may be put into a wire. */
export type InjectionRefusal =
  | { readonly code: 'restraint-circuit' }
  | { readonly code: 'high-voltage-circuit' }
  | { readonly code: 'data-circuit' }
  | { readonly code: 'end-plugged-in'; readonly nodeIds: readonly string[] }
  | { readonly code: 'no-fuse-rating' }
  | { readonly code: 'battery-connected' }
  | { readonly code: 'battery-off' }
  | { readonly code: 'current-too-high'; readonly amps: number; readonly mostA: number }
  | { readonly code: 'no-lamp-small-enough'; readonly mostA: number };

/** A way of putting current in that the wire and its pins bear. */
export type InjectionPlan =
  /** A current-limited supply, or 12 V through a resistor, into a wire unplugged at both ends. */
  | {
      readonly way: 'limited-supply';
      readonly amps: number;
      readonly supplyVolts: number;
      /** In place of a current limit: from the supply's volts through this into the wire. */
      readonly seriesOhms: number;
      readonly seriesWatts: number;
      readonly fuseA: number;
      readonly longestS: number;
    }
  /** A lamp in place of the fuse of a power feed, its loads unplugged (common practice, no source). */
  | {
      readonly way: 'lamp-for-fuse';
      readonly lamp: LimiterLamp;
      /** The most it passes into a dead short, hot. */
      readonly amps: number;
      readonly mostA: number;
    };

/** What may be done, or why not. */
export type InjectionAnswer =
  | { readonly outcome: 'allowed'; readonly plan: InjectionPlan }
  | { readonly outcome: 'refused'; readonly reason: InjectionRefusal };

/** Trade lamps to choose from: 5 W to 55 W at 12 V. */
export const tradeLamps: readonly LimiterLamp[] = [5, 10, 21, 35, 55].map((watts) => ({ watts, volts: 12 }));

/**
 * Limiter for an injected-current drop test on a circuit as it stands: supply setting and resistor on a
 * signal wire (0.1 A unless asked for more, never above 0.5 A), or the largest lamp within fuse and wire
 * on a fused feed. Refuses restraint, high-voltage and data circuits, a signal wire with an end still
 * plugged in or the battery on it, and a feed with its loads plugged in; wires spliced to it count with it.
 * @example
 * safeInjection(sample.circuit, { apartNodeIds: ['node:west', 'node:far'], switchClosed: null, ignitionOn: false, batteryConnected: false }).plan.seriesOhms // => 120
 */
export function safeInjection(
  circuit: Circuit,
  state: CircuitState,
  wanted: {
    readonly amps?: number;
    readonly lamps?: readonly LimiterLamp[];
    /** Wires spliced to the circuit, each with what sits at its far end: current goes there too. */
    readonly joined?: readonly Pick<LineBranch, 'circuit' | 'end' | 'joinNodeId'>[];
  } = {},
): InjectionAnswer {
  const refused = (reason: InjectionRefusal): InjectionAnswer => ({ outcome: 'refused', reason });
  const joined = wanted.joined ?? [];
  const duties = new Set([circuit, ...joined.map((branch) => branch.circuit)].map(({ duty }) => duty));
  if (duties.has('restraint')) return refused({ code: 'restraint-circuit' });
  if (duties.has('high-voltage')) return refused({ code: 'high-voltage-circuit' });
  if (duties.has('data')) return refused({ code: 'data-circuit' });
  const isFeed = circuit.ends.some((end) => end.kind === 'fused-supply');
  // The lamp takes the fuse's place, so the supply end itself stays on.
  const mustBeApart = lineEnds({ circuit, branches: joined }).filter(
    (end) => !(isFeed && end.kind === 'fused-supply' && circuit.ends.includes(end)),
  );
  const pluggedIn = mustBeApart
    .filter((end) => end.nodeId === null || !state.apartNodeIds.includes(end.nodeId))
    .map((end) => end.nodeId ?? end.kind);
  if (pluggedIn.length > 0) return refused({ code: 'end-plugged-in', nodeIds: pluggedIn });
  if (isFeed) return lampForFuse(circuit, joined, state, wanted.lamps ?? tradeLamps);
  if (state.batteryConnected) return refused({ code: 'battery-connected' });
  return limitedSupply(wanted.amps ?? usualInjectionA);
}

function limitedSupply(amps: number): InjectionAnswer {
  if (!(amps > 0) || amps > mostInjectionA)
    return { outcome: 'refused', reason: { code: 'current-too-high', amps, mostA: mostInjectionA } };
  const seriesOhms = mostInjectionVolts / amps;
  return {
    outcome: 'allowed',
    plan: {
      way: 'limited-supply',
      amps,
      supplyVolts: mostInjectionVolts,
      seriesOhms,
      // Twice what it turns into heat with a dead short behind it, as resistors are chosen (common practice, no source).
      seriesWatts: 2 * amps * mostInjectionVolts,
      fuseA: injectionFuseA,
      longestS: longestInjectionS,
    },
  };
}

function lampForFuse(
  circuit: Circuit,
  joined: readonly Pick<LineBranch, 'circuit'>[],
  state: CircuitState,
  lamps: readonly LimiterLamp[],
): InjectionAnswer {
  if (circuit.fuseA === null) return { outcome: 'refused', reason: { code: 'no-fuse-rating' } };
  if (!state.batteryConnected) return { outcome: 'refused', reason: { code: 'battery-off' } };
  const wires = [circuit, ...joined.map((branch) => branch.circuit)];
  const mostA = Math.min(circuit.fuseA, ...wires.map(({ conductorMm2 }) => currentCarryingA(conductorMm2)));
  const fitting = lamps
    .map((lamp) => ({ lamp, amps: lamp.watts / lamp.volts }))
    .filter(({ amps }) => amps <= mostA)
    .sort((a, b) => b.amps - a.amps)[0];
  if (!fitting) return { outcome: 'refused', reason: { code: 'no-lamp-small-enough', mostA } };
  return { outcome: 'allowed', plan: { way: 'lamp-for-fuse', ...fitting, mostA } };
}
