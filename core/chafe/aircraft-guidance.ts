const inchMm = 25.4;

/**
 * Published aircraft guidance in mm and loom diameters. It is not a rule for cars; it is quoted as what one
 * published body of practice advises. Sources are in `guidanceSources`.
 */
export const aircraftGuidance = {
  /** Between supports. */
  spanMm: 24 * inchMm,
  /** Deflection between supports under a light hand. */
  bowMm: 0.5 * inchMm,
  /** At a hole. */
  holeGapMm: 0.375 * inchMm,
  bendDiameters: 10,
  supportedBendDiameters: 3,
  /** Between supports of a loom that nothing ties together. */
  untiedMm: 12 * inchMm,
  /** To a part that moves. */
  movingGapMm: 0.5 * inchMm,
  /** From a splice to the nearest plug or part. */
  spliceToEndMm: 12 * inchMm,
  splicesBetweenPlugs: 1,
} as const;

/** Where a piece of guidance stands, and whether it was read there or is quoted from memory. */
export interface GuidanceSource {
  readonly document: 'AC 43.13-1B' | 'TM 1-1500-204-23-4' | 'AS50881';
  /** Paragraph or item; null where it is not remembered. */
  readonly place: string | null;
  readonly fromMemory: boolean;
}

const seen = (document: GuidanceSource['document'], place: string): GuidanceSource => ({
  document,
  place,
  fromMemory: false,
});
const remembered = (document: GuidanceSource['document']): GuidanceSource => ({
  document,
  place: null,
  fromMemory: true,
});

/** One row for each piece of guidance a map can be held against. */
export const guidanceSources = {
  'long-span': seen('AC 43.13-1B', '11-96a'),
  'deep-bow': seen('AC 43.13-1B', '11-118'),
  'tight-bend': seen('TM 1-1500-204-23-4', '27'),
  'narrow-hole': seen('AC 43.13-1B', '11-115'),
  'cover-only': seen('AC 43.13-1B', '11-96b'),
  'tied-only': seen('AC 43.13-1B', '11-96o'),
  'untied-span': seen('AC 43.13-1B', '11-158b'),
  underfoot: seen('AC 43.13-1B', '11-96s'),
  'no-drip-loop': seen('AC 43.13-1B', '11-96p'),
  'near-moving': remembered('AS50881'),
  'splice-near-end': remembered('AC 43.13-1B'),
  'many-splices': remembered('AC 43.13-1B'),
} as const satisfies Readonly<Record<string, GuidanceSource>>;

export type GuidanceCode = keyof typeof guidanceSources;

/**
 * One figure of a run that lies outside published aircraft guidance. `thing` is the record it lies at, the run's own
 * where there is none; `atMm` the drawn station in its middle, null where it holds for all of the run; `mm` the
 * figure and `advisedMm` the one advised, where there are such.
 */
export interface GuidanceFlag {
  readonly code: GuidanceCode;
  readonly thing: string;
  readonly atMm: number | null;
  readonly mm: number | null;
  readonly advisedMm: number | null;
}

/**
 * Smallest advised bend radius of a loom, mm: 10 diameters, or 3 where it is supported (TM 1-1500-204-23-4 item 27;
 * AS50881).
 * @example
 * advisedBendMm(5.842, false) // => 58.42
 */
export function advisedBendMm(diameterMm: number, supported: boolean): number {
  return diameterMm * (supported ? aircraftGuidance.supportedBendDiameters : aircraftGuidance.bendDiameters);
}
