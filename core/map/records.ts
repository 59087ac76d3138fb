import { z } from 'zod';
import type { BodyPoint, PlanPoint } from '../geometry/place.ts';
import { idSchema } from '../quantity/id.ts';
import {
  bodyStyleSchema,
  cautionSchema,
  circuitDutySchema,
  circuitEndKindSchema,
  clipKindSchema,
  coveringSchema,
  driveSideSchema,
  insulationClassSchema,
  nodeKindSchema,
  outlineKindSchema,
  panelKindSchema,
  rubSpotKindSchema,
  segmentTraitSchema,
} from './kinds.ts';

/** Longest thing anyone draws is a bus; beyond this a number is a slip, not a place. */
const farthestMm = 50_000;
const coordinateMm = z.number().min(-farthestMm).max(farthestMm);
const lengthMm = z.number().min(0).max(farthestMm);
const minutes = z.number().min(0).max(2_000);
const nameText = z.string().max(120);
const noteText = z.string().max(4_000);

/** A place on the plan view: x rearward, y to the right, in millimetres (ISO 4130 directions, from memory). */
export const planPointSchema: z.ZodType<PlanPoint> = z.strictObject({
  xMm: coordinateMm,
  yMm: coordinateMm,
});

/** A place in the car: the plan view plus height above the floor. */
export const bodyPointSchema: z.ZodType<BodyPoint> = z.strictObject({
  xMm: coordinateMm,
  yMm: coordinateMm,
  zMm: coordinateMm,
});

const handleSchema = z.strictObject({ dxMm: coordinateMm, dyMm: coordinateMm });

/** An outline corner; the handles, when present, bend the edge towards (`in`) and away from (`out`) it. */
export const vertexSchema = z.strictObject({
  xMm: coordinateMm,
  yMm: coordinateMm,
  handleIn: handleSchema.optional(),
  handleOut: handleSchema.optional(),
});
export type Vertex = z.infer<typeof vertexSchema>;

export const outlineSchema = z.strictObject({
  id: idSchema('outline'),
  name: nameText,
  kind: outlineKindSchema,
  closed: z.boolean(),
  vertices: z.array(vertexSchema).min(2).max(2_000),
  order: z.number(),
});
export type Outline = z.infer<typeof outlineSchema>;

/** A photo or scan under the drawing. Its bytes are kept apart, named by their SHA-256. */
export const underlaySchema = z.strictObject({
  id: idSchema('underlay'),
  name: nameText,
  imageSha256: z.string().regex(/^[0-9a-f]{64}$/),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  widthPx: z.number().int().min(1).max(20_000),
  heightPx: z.number().int().min(1).max(20_000),
  /** Where the picture's top left pixel lies, how large a pixel is and how the picture is turned. */
  origin: planPointSchema,
  mmPerPx: z.number().positive().max(1_000),
  turnRad: z.number(),
  opacity: z.number().min(0).max(1),
  hidden: z.boolean(),
  order: z.number(),
});
export type Underlay = z.infer<typeof underlaySchema>;

export const nodeSchema = z.strictObject({
  id: idSchema('node'),
  name: nameText,
  kind: nodeKindSchema,
  at: bodyPointSchema,
  /** Panels that must be off before a hand or probe reaches this place. */
  panelIds: z.array(idSchema('panel')).max(50),
  note: noteText,
});
export type MapNode = z.infer<typeof nodeSchema>;

export const clipSchema = z.strictObject({
  id: idSchema('clip'),
  /** Station along the drawn run, from its `fromNodeId` end. */
  stationMm: lengthMm,
  kind: clipKindSchema,
  /** Known to be gone or broken on this model: it holds nothing. */
  missing: z.boolean(),
});
export type Clip = z.infer<typeof clipSchema>;

/** A stretch of a run that stays hidden until the panel is off. */
export const panelTagSchema = z.strictObject({
  panelId: idSchema('panel'),
  fromMm: lengthMm,
  toMm: lengthMm,
  /** Proposed by overlap on the drawing until a person says it is so. */
  confirmed: z.boolean(),
});
export type PanelTag = z.infer<typeof panelTagSchema>;

export const segmentSchema = z.strictObject({
  id: idSchema('segment'),
  name: nameText,
  /** The route this run belongs to; runs drawn in one go share it. */
  routeName: nameText,
  fromNodeId: idSchema('node'),
  toNodeId: idSchema('node'),
  bends: z.array(bodyPointSchema).max(500),
  /** Bends rounded rather than cornered. */
  smooth: z.boolean(),
  /** Null: worked out from the circuits that run through. */
  bundleDiameterMm: z.number().positive().max(200).nullable(),
  /** The length a tape showed along the loom, when someone measured; what it exceeds the drawing by is slack. */
  measuredLengthMm: z.number().positive().max(farthestMm).nullable(),
  covering: coveringSchema,
  clips: z.array(clipSchema).max(500),
  traits: z.array(segmentTraitSchema).max(12),
  tags: z.array(panelTagSchema).max(200),
  /** Nothing hides it: it is seen without taking anything off. Absent: nobody has said so. */
  inView: z.boolean().optional(),
  /** Mirrored or copied and not yet confirmed on a car. */
  unchecked: z.boolean(),
  note: noteText,
});
export type Segment = z.infer<typeof segmentSchema>;

export const panelSchema = z.strictObject({
  id: idSchema('panel'),
  name: nameText,
  kind: panelKindSchema,
  area: z.array(planPointSchema).max(500),
  minutesOff: minutes,
  minutesOn: minutes,
  /** Panels that must be off before this one. */
  offFirst: z.array(idSchema('panel')).max(50),
  cautions: z.array(cautionSchema).max(12),
  note: noteText,
  order: z.number(),
});
export type Panel = z.infer<typeof panelSchema>;

export const rubSpotSchema = z.strictObject({
  id: idSchema('rub-spot'),
  name: nameText,
  kind: rubSpotKindSchema,
  shape: z.enum(['point', 'line', 'area']),
  /** One point, an open line of two or more, or a closed area of three or more. */
  points: z.array(bodyPointSchema).min(1).max(200),
  /** Free gap between loom surface and spot at the nearest place. Null: taken from the drawing. */
  clearanceMm: z.number().min(0).max(2_000).nullable(),
  /** Where the spot lies seen from the loom; decides whether sag closes the gap. */
  side: z.enum(['below', 'level', 'above']),
  severity: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  timesFound: z.number().int().min(0).max(100_000),
  note: noteText,
});
export type RubSpot = z.infer<typeof rubSpotSchema>;

export const pathStepSchema = z.strictObject({
  segmentId: idSchema('segment'),
  /** Run from its `toNodeId` end to its `fromNodeId` end. */
  reversed: z.boolean(),
});
export type PathStep = z.infer<typeof pathStepSchema>;

export const circuitEndSchema = z.strictObject({
  nodeId: idSchema('node').nullable(),
  kind: circuitEndKindSchema,
});
export type CircuitEnd = z.infer<typeof circuitEndSchema>;

export const circuitSchema = z.strictObject({
  id: idSchema('circuit'),
  name: nameText,
  /** Base colour, then stripe, as words the shop uses; empty when not known. */
  wireColours: z.array(z.string().max(30)).max(3),
  conductorMm2: z.number().positive().max(120),
  insulation: insulationClassSchema,
  duty: circuitDutySchema,
  /** Fuse rating when one feeds the circuit. */
  fuseA: z.number().positive().max(500).nullable(),
  /** From the first end to the second. */
  path: z.array(pathStepSchema).max(2_000),
  pins: z.array(z.strictObject({ nodeId: idSchema('node'), pin: z.string().max(20) })).max(500),
  ends: z.tuple([circuitEndSchema, circuitEndSchema]),
  note: noteText,
  order: z.number(),
});
export type Circuit = z.infer<typeof circuitSchema>;

/** What the map as a whole is of. One record, so that renaming it is an edit like any other. */
export const mapDetailsSchema = z.strictObject({
  id: z.literal('details:map'),
  name: nameText.min(1),
  bodyStyle: bodyStyleSchema,
  driveSide: driveSideSchema,
  /** The two points and true distance the drawing was scaled by; null until someone does. */
  scale: z
    .strictObject({
      from: planPointSchema,
      to: planPointSchema,
      distanceMm: z.number().positive(),
    })
    .nullable(),
  /** y of the car's centre line, for mirroring. */
  centreLineYMm: coordinateMm,
  note: noteText,
});
export type MapDetails = z.infer<typeof mapDetailsSchema>;

/** The schema of each table's records, by the word before the colon in their ids. */
export const schemaOfKind = {
  outline: outlineSchema,
  underlay: underlaySchema,
  node: nodeSchema,
  segment: segmentSchema,
  panel: panelSchema,
  'rub-spot': rubSpotSchema,
  circuit: circuitSchema,
} as const;
