import type { CauseKind } from '../chafe/cause.ts';
import type { NodeKind, PanelKind, RubSpotKind, SegmentTrait } from '../map/kinds.ts';

/** What was fitted, repaired or disturbed lately, asked at intake. */
export const recentWorks = [
  'tow-bar',
  'audio',
  'alarm-or-tracker',
  'windscreen',
  'other-glass',
  'seat',
  'carpet',
  'headlining',
  'ply-lining',
  'crash-repair',
  'battery',
  'underbody',
] as const;
export type RecentWork = (typeof recentWorks)[number];

/** When the fault shows, asked at intake. */
export const symptoms = [
  'on-bumps',
  'when-wet',
  'when-door-moves',
  'when-tailgate-moves',
  'when-seat-moves',
  'when-stepped-on',
  'when-loaded',
  'when-hot',
] as const;
export type Symptom = (typeof symptoms)[number];

/**
 * Places that a work or a symptom points to: one of what is named is enough. Without places every place is
 * meant. `causes` narrows what is raised there to those.
 */
export interface PlaceRule {
  /** Hidden by a panel of these kinds. */
  readonly panelKinds?: readonly PanelKind[];
  /** On a run with these traits. */
  readonly traits?: readonly SegmentTrait[];
  /** Beside a node of these kinds. */
  readonly nodeKinds?: readonly NodeKind[];
  /** Beside a rub spot of these kinds. */
  readonly rubSpotKinds?: readonly RubSpotKind[];
  /** In the front or rear quarter of what is drawn, together with the rest of the rule. */
  readonly end?: 'front' | 'rear';
  readonly causes?: readonly CauseKind[];
  readonly factor: number;
}

/** How much likelier damage is where a hand has been. Every factor is judgement, no source. */
export const recentWorkTable: Readonly<Record<RecentWork, readonly PlaceRule[]>> = {
  'tow-bar': [{ panelKinds: ['boot-side', 'boot-floor', 'underside', 'tailgate'], end: 'rear', factor: 3 }], // judgement
  audio: [{ panelKinds: ['dash', 'console', 'door-card'], factor: 3 }], // judgement
  'alarm-or-tracker': [{ panelKinds: ['dash', 'console'], nodeKinds: ['fuse-box'], factor: 2.5 }], // judgement
  windscreen: [{ panelKinds: ['pillar', 'headlining', 'dash'], end: 'front', factor: 2 }], // judgement
  'other-glass': [{ panelKinds: ['quarter', 'tailgate', 'door-card', 'pillar'], factor: 2 }], // judgement
  seat: [{ panelKinds: ['seat'], traits: ['slides-with-seat'], rubSpotKinds: ['seat-mount'], factor: 3 }], // judgement
  carpet: [{ panelKinds: ['carpet', 'sill'], traits: ['under-feet'], factor: 3 }], // judgement
  headlining: [{ panelKinds: ['headlining', 'pillar'], factor: 3 }], // judgement
  'ply-lining': [
    { panelKinds: ['boot-side', 'quarter', 'boot-floor'], rubSpotKinds: ['fastener-tip'], factor: 3 }, // judgement
  ],
  'crash-repair': [{ panelKinds: ['quarter', 'boot-side', 'arch-liner', 'sill', 'pillar'], factor: 2 }], // judgement
  battery: [{ nodeKinds: ['fuse-box', 'ground-point'], factor: 2 }], // judgement
  underbody: [{ panelKinds: ['underside', 'arch-liner'], factor: 2 }], // judgement
};

/** How much likelier damage is where a symptom points. Every factor is judgement, no source. */
export const symptomTable: Readonly<Record<Symptom, readonly PlaceRule[]>> = {
  'on-bumps': [{ causes: ['rub-spot', 'bare-body', 'clip-edge', 'pass-through'], factor: 1.5 }], // judgement
  'when-wet': [
    { causes: ['wet', 'joint'], factor: 4 }, // judgement
    { traits: ['wet'], factor: 2 }, // judgement
  ],
  'when-door-moves': [
    { traits: ['crosses-hinge'], factor: 4 }, // judgement
    { panelKinds: ['door-card'], rubSpotKinds: ['hinge'], factor: 2 }, // judgement
  ],
  'when-tailgate-moves': [
    { traits: ['crosses-hinge'], end: 'rear', factor: 4 }, // judgement
    { panelKinds: ['tailgate'], factor: 3 }, // judgement
  ],
  'when-seat-moves': [
    { traits: ['slides-with-seat'], rubSpotKinds: ['seat-mount'], factor: 4 }, // judgement
    { panelKinds: ['seat'], factor: 2 }, // judgement
  ],
  'when-stepped-on': [{ traits: ['under-feet'], panelKinds: ['carpet'], factor: 3 }], // judgement
  'when-loaded': [{ panelKinds: ['boot-floor', 'boot-side', 'underside', 'seat'], factor: 2 }], // judgement
  'when-hot': [{ traits: ['hot'], factor: 3 }], // judgement
};
