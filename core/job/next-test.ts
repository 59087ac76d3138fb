import type { CircuitState, PlugSide } from '../circuit/car-state.ts';
import type { InjectionPlan } from '../circuit/safe-injection.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import type { CircuitId, NodeId, PanelId, SegmentId } from '../quantity/id.ts';
import type { Stretch } from './reading.ts';

/** Ways of testing that are ever offered. */
export const nextTestKinds = [
  'unplug',
  'drop',
  'drop-both-ends',
  'lamp-for-fuse',
  'ohms-both-ends',
  'ohms-between',
  'drop-between',
  'beep-between',
  'capacitance',
  'beep',
  'move',
  'ohms-to-body',
  'ohms-through',
  'ohms-between-at-plug',
] as const;
export type NextTestKind = (typeof nextTestKinds)[number];

/** A test worth doing before anything more comes off. */
export interface NextTest {
  readonly kind: NextTestKind;
  /** Plug to part; else where the leads go, the driven or first one before the other. */
  readonly nodeIds: readonly NodeId[];
  /** Which half of a plug that is parted each lead goes to; null at ends, and where both halves are meant. */
  readonly sides: readonly (PlugSide | null)[];
  /** For a test on the wire on one side of a parted plug: the place where that wire ends. Null for others. */
  readonly towardsId: NodeId | null;
  /** The wire it may touch, and where its leads go: its ends on the same sides as `nodeIds`; null for tests on one wire. */
  readonly other: {
    readonly circuitId: CircuitId;
    readonly nodeIds: readonly NodeId[];
    readonly sides: readonly (PlugSide | null)[];
  } | null;
  /** What is moved, on the circuit's own ruler and on its runs; empty for tests at plugs. */
  readonly ranges: readonly StationRange[];
  readonly stretches: readonly Stretch[];
  /** How the car must stand. */
  readonly state: CircuitState;
  /** Panels that must come off to reach it, in order; their minutes are in `minutes`. */
  readonly takeOff: readonly PanelId[];
  readonly outcomes: readonly TestOutcome[];
  readonly minutes: number;
  /** Expected minutes until the fault is seen, without the test less with it and its own minutes. */
  readonly minutesSaved: number;
  /** What it is expected to tell, in bits. */
  readonly bits: number;
  /** How current is put in without harm; null for tests without. */
  readonly injection: InjectionPlan | null;
  /** What the meter would show with the fault where it is now thought most likely. */
  readonly expected: ExpectedFigure | null;
  /** Doing the first opening before the test is expected to be quicker still. */
  readonly betterAfterOpening: boolean;
}

export interface ExpectedFigure {
  readonly value: number;
  readonly unit: FigureUnit;
}

/** Ohm: the reading at the first lead's end less that at the other. */
export type FigureUnit = 'millivolt' | 'ohm' | 'picofarad';

/** One way a test may come out, and what to do then. */
export interface TestOutcome {
  readonly label: OutcomeLabel;
  readonly probability: number;
  /** Minutes until the fault is seen from then on. */
  readonly expectedMinutes: number;
  /** The opening that then comes first; null when there is none left. */
  readonly first: {
    readonly takeOff: readonly PanelId[];
    readonly segmentIds: readonly SegmentId[];
    readonly nodeIds: readonly NodeId[];
  } | null;
}

/** What the user sees when a test comes out one way. */
export type OutcomeLabel =
  | { readonly what: 'stays' | 'gone' | 'changes' | 'no-change' | 'beeps' | 'silent' }
  /** On one piece of the wire: a path that should not be there, none, or the wire broken through. */
  | { readonly what: 'to-body' | 'touch' | 'clear' | 'broken' }
  /** Ohms up to what a sound piece may have, or more. */
  | { readonly what: 'through' | 'too-much'; readonly ohms: number }
  | { readonly what: 'no-current' | 'lamp-dark' | 'open-line' | 'no-steady-figure' }
  /** A figure that puts the fault within a piece of the circuit. */
  | {
      readonly what: 'figure';
      readonly from: number;
      readonly to: number;
      readonly unit: FigureUnit;
      readonly fromMm: number;
      readonly toMm: number;
    };
