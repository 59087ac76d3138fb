import type { CauseShare } from '../chafe/cause.ts';
import type { RecentWork, Symptom } from '../history/recent-work-table.ts';
import type { OwnInterval } from '../locate/own-interval.ts';
import type { FaultClass } from '../map/kinds.ts';
import type { EntryId, NodeId, PanelId, SegmentId } from '../quantity/id.ts';
import type { Problem } from '../quantity/problem.ts';
import type { HistoryEffect } from './history-effect.ts';
import type { NextTest } from './next-test.ts';

/** Everything the Find place and the command line show; what `rank` gives. Plain data, safe to post to and from a worker. */
export interface Ranking {
  readonly circuit: {
    readonly id: string;
    readonly name: string;
    readonly lengthMm: number;
  };
  readonly posterior: Posterior;
  readonly digPlan: readonly DigStep[];
  /** Mean minutes until the fault is seen when the plan is followed, given that it is on a stretch that can be seen. */
  readonly expectedMinutes: number;
  /** No order of opening can have a smaller mean; equal to `expectedMinutes` where the plan is proved best. */
  readonly lowerBoundMinutes?: number;
  /** The same with the minutes for putting back what was taken off until then. */
  readonly expectedTotalMinutes?: number;
  /** Chance of the places that cannot be reached because a panel is to stay on. */
  readonly chanceLeftOut?: number;
  /** Every going to a place in order, by name; handed back as `keepOrder` it keeps small changes from shuffling. */
  readonly lookOrder?: readonly string[];
  /** Set when the plan holds only what fits into a given time: minutes, chance, and the most any choice could have. */
  readonly timeBox?: { readonly minutes: number; readonly seen: number; readonly mostSeen: number };
  /** What each reading did, in the order of the record. */
  readonly readings: readonly ReadingEffect[];
  /** Readings that cannot both hold; strongest first. */
  readonly contradictions: readonly Contradiction[];
  /** Tests that pay, best first; empty unless asked for with `withTests`. */
  readonly nextTests: readonly NextTest[];
  /** What past jobs and the answers at intake did; where asked for. */
  readonly told?: ToldEffects;
  readonly warnings: readonly RankWarning[];
}

/** Evidence that was there before the first reading: past jobs, recent work, when the fault shows. */
export type Told = 'past-jobs' | RecentWork | Symptom;

/** What it did to the answer; for each opening see its own `told`. */
export interface ToldEffects {
  /** Every answer given at intake, with the length of the circuit it points to; 0 for one that changes nothing. */
  readonly answers: readonly { readonly word: RecentWork | Symptom; readonly lengthMm: number }[];
  /** Null where this job does not use past jobs, or there are none. */
  readonly pastJobs: {
    readonly jobs: number;
    readonly jobsOnMap: number;
    readonly effects: readonly HistoryEffect[];
  } | null;
}

/** Where the fault may be. stretches + components + noneOfThese = 1. */
export interface Posterior {
  /** Probability of each fault class, `component` and `none-of-these`; sums to 1. */
  readonly classes: Readonly<Record<FaultClass | 'component' | 'none-of-these', number>>;
  readonly stretches: readonly StretchProbability[];
  readonly components: readonly {
    readonly nodeId: NodeId;
    readonly probability: number;
  }[];
  readonly noneOfThese: number;
  /** Median of the fault's station along the circuit, given that it is on the wire. */
  readonly medianStationMm: number;
  /** Total length of the smallest set of cells that holds 80 percent, given that it is on the wire. */
  readonly credible80Mm: number;
  /** The fine curve: cell borders along the circuit (n + 1) and probability per cell (n). */
  readonly cellEdgesMm: Float64Array;
  readonly cellProbability: Float64Array;
}

/** A stretch of the circuit between two places where the likelihood or the needed panels change. */
export interface StretchProbability {
  readonly segmentId: SegmentId;
  /** Stations along the traced circuit, in mm of wire from its first end. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly probability: number;
}

/** One opening: what comes off, what is then in view, how likely the fault is there. */
export interface DigStep {
  readonly rank: number;
  /** Panels to take off now, in order; empty when the place is open already. */
  readonly takeOff: readonly PanelId[];
  /** Minutes for taking off and looking. */
  readonly minutes: number;
  /** The stretches in view, by circuit station. `parts` lists them when they are not one piece. */
  readonly look: {
    readonly segmentIds: readonly SegmentId[];
    readonly fromMm: number;
    readonly toMm: number;
    readonly parts: readonly StretchProbability[];
    /** Plugs to part and look into, reachable in this opening. */
    readonly nodeIds?: readonly NodeId[];
  };
  /** Chance that the fault is there and is seen in this opening. */
  readonly probability: number;
  readonly runningMinutes: number;
  readonly runningProbability: number;
  readonly reason: Reason;
  /** For each piece of evidence told, the chance of this opening if that one were not known. */
  readonly told?: readonly { readonly told: Told; readonly without: number }[];
  /** Minutes lost on average by beginning here instead; where asked for. */
  readonly regretMinutes?: number;
  /** Beginning here is as good as with the first: the loss is under 2 percent. */
  readonly asGoodAsFirst?: boolean;
}

/** Why a place ranks where it does, as facts; the language table makes the line. */
export interface Reason {
  readonly causes: readonly CauseShare[];
  /** Chance per minute of this opening against the mean of all openings. */
  readonly worthRatio: number;
  readonly alreadyOpen: boolean;
  /** This plan looked here before; now for what was overlooked. */
  readonly secondLook?: boolean;
  /** Seen only in part, past a panel that stays on for now. */
  readonly halfView?: true;
}

/** What one reading did to the answer. */
export interface ReadingEffect {
  readonly entryId: EntryId;
  /** Where the reading alone puts the fault, by circuit station. */
  readonly interval: OwnInterval;
  /** What was learned from it on top of everything else, in bits; 0 for one that changed nothing. */
  readonly bits: number;
  /** Why it tells nothing about the place, and which way would. Null for one that tells something or is not used. */
  readonly flat: FlatReading | null;
  /** Why it is not used at all. */
  readonly unused: UnusedReading['why'] | null;
}

/** Why a reading cannot place the fault and what could. */
export interface FlatReading {
  readonly why: /** Ohms through two leads: the whole wire is less than their own uncertainty. */
    | 'two-wire-ohms'
    /** A break or a poor joint reads the same anywhere between two places a lead can reach. */
    | 'inside-one-access'
    /** The unknown strength of the fault swallows the place. */
    | 'fault-strength-unknown';
  readonly better: 'drop' | 'capacitance' | 'unplug';
  /** What the better way would place it to, one standard deviation; null where it only halves the ground. */
  readonly expectedSdMm: number | null;
}

/** A reading that could not be used, with the reason. */
export interface UnusedReading {
  readonly entryId: EntryId;
  readonly why:
    | 'forbidden-duty'
    | 'lead-not-on-circuit'
    | 'other-circuit-unknown'
    | 'live-while-measured'
    | 'end-part-plugged-in'
    | 'off-circuit'
    | 'nothing-apart'
    | 'one-position-only';
}

/** Readings that no single fault explains. */
export interface Contradiction {
  readonly entryIds: readonly EntryId[];
  readonly unless: /** One place explains them all if the fault's resistance was not the same each time. */
    | 'fault-changed'
    /** No one place does: two faults, or a lead, pin or state not as written. */
    | 'two-faults-or-slip';
}

/** Something the user should know about the answer, as facts. */
export type RankWarning =
  | {
      readonly code: 'readings-unused';
      readonly count: number;
      readonly readings?: readonly UnusedReading[];
    }
  | {
      readonly code: 'no-panel-tag';
      readonly segmentId: SegmentId;
      readonly fromMm: number;
      readonly toMm: number;
    }
  | {
      readonly code: 'tag-unconfirmed';
      readonly segmentId: SegmentId;
      readonly panelId: PanelId;
    }
  | { readonly code: 'segment-unchecked'; readonly segmentId: SegmentId }
  | { readonly code: 'no-scale' }
  | { readonly code: 'no-rub-spots' }
  | { readonly code: 'restraint-circuit' }
  | { readonly code: 'high-voltage-circuit' }
  | {
      readonly code: 'entry-ignored';
      readonly entryId: string;
      readonly problem: Problem;
    };
