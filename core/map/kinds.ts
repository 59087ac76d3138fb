import { z } from 'zod';

/** Body shapes a map can be of; plain words of the trade. */
export const bodyStyles = ['hatch', 'saloon', 'estate', 'van', 'pickup', 'coupe', 'other'] as const;
export const bodyStyleSchema = z.enum(bodyStyles);
export type BodyStyle = z.infer<typeof bodyStyleSchema>;

/** Side on which the driver sits, seen facing forward. */
export const driveSideSchema = z.enum(['left', 'right']);
export type DriveSide = z.infer<typeof driveSideSchema>;

export const outlineKinds = ['shell', 'seat', 'sill', 'arch', 'pillar', 'other'] as const;
export const outlineKindSchema = z.enum(outlineKinds);
export type OutlineKind = z.infer<typeof outlineKindSchema>;

export const nodeKinds = [
  'branch',
  'inline-connector',
  'splice',
  'ground-point',
  'grommet',
  'module',
  'switch',
  'sensor',
  'load',
  'fuse-box',
  'loose-end',
] as const;
export const nodeKindSchema = z.enum(nodeKinds);
export type NodeKind = z.infer<typeof nodeKindSchema>;

/** What wraps a run; the protection table in core/chafe has one row for each. */
export const coverings = [
  'bare',
  'pvc-tape',
  'fleece-tape',
  'cloth-tape',
  'pvc-tube',
  'convoluted-tube',
  'braided-sleeve',
] as const;
export const coveringSchema = z.enum(coverings);
export type Covering = z.infer<typeof coveringSchema>;

/** Circumstances along a whole run that add hazard of their own. */
export const segmentTraits = [
  'crosses-hinge',
  'slides-with-seat',
  'under-feet',
  'wet',
  'hot',
  'drawn-tight',
] as const;
export const segmentTraitSchema = z.enum(segmentTraits);
export type SegmentTrait = z.infer<typeof segmentTraitSchema>;

export const clipKinds = ['clip', 'edge-clip', 'tape', 'tie', 'stand-off'] as const;
export const clipKindSchema = z.enum(clipKinds);
export type ClipKind = z.infer<typeof clipKindSchema>;

export const panelKinds = [
  'seat',
  'sill',
  'quarter',
  'pillar',
  'dash',
  'carpet',
  'door-card',
  'headlining',
  'boot-side',
  'boot-floor',
  'tailgate',
  'console',
  'arch-liner',
  'underside',
  'other',
] as const;
export const panelKindSchema = z.enum(panelKinds);
export type PanelKind = z.infer<typeof panelKindSchema>;

/** Dangers and care that belong to taking one panel off. */
export const cautions = [
  'airbag',
  'belt-tensioner',
  'high-voltage',
  'battery',
  'glass',
  'fuel',
  'raised-vehicle',
  'one-use-clips',
  'two-people',
] as const;
export const cautionSchema = z.enum(cautions);
export type Caution = z.infer<typeof cautionSchema>;

export const rubSpotKinds = [
  'burr',
  'fastener-tip',
  'raw-edge',
  'panel-edge',
  'flange',
  'bracket',
  'seat-mount',
  'hinge',
  'moving-part',
  'clamp-edge',
  'smooth-panel',
  'other',
] as const;
export const rubSpotKindSchema = z.enum(rubSpotKinds);
export type RubSpotKind = z.infer<typeof rubSpotKindSchema>;

export const insulationClasses = ['thin-wall', 'thick-wall', 'ultra-thin-wall'] as const;
export const insulationClassSchema = z.enum(insulationClasses);
export type InsulationClass = z.infer<typeof insulationClassSchema>;

/** What sits at one end of a traced circuit. */
export const circuitEndKinds = [
  'fused-supply',
  'module-input-pull-up',
  'high-side-driver',
  'low-side-driver',
  'switch-to-ground',
  'sensor',
  'load',
  'ground-point',
  'other',
] as const;
export const circuitEndKindSchema = z.enum(circuitEndKinds);
export type CircuitEndKind = z.infer<typeof circuitEndKindSchema>;

/** Which rules of care the whole circuit falls under; anything but `ordinary` limits the tests offered. */
export const circuitDutySchema = z.enum(['ordinary', 'data', 'restraint', 'high-voltage']);
export type CircuitDuty = z.infer<typeof circuitDutySchema>;

/**
 * Whether wiring of a duty is looked at and nothing else: not measured, not moved, not fed.
 * @example
 * isLookOnly('restraint') // => true
 */
export const isLookOnly = (duty: CircuitDuty | undefined): duty is 'restraint' | 'high-voltage' =>
  duty === 'restraint' || duty === 'high-voltage';

/** Ways one wire can fail; the names used throughout and in the command line's output. */
export const faultClasses = [
  'short-to-ground',
  'short-to-supply',
  'wire-to-wire',
  'open',
  'high-resistance',
] as const;
export const faultClassSchema = z.enum(faultClasses);
export type FaultClass = z.infer<typeof faultClassSchema>;
