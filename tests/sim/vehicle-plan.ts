import type { BodyStyle, Caution, PanelKind } from '#core/map/kinds.ts';

/** A panel of an invented vehicle: where it lies as shares of length and half width, and what it takes. */
export interface PanelPlan {
  readonly name: string;
  readonly kind: PanelKind;
  /** Front, rear (0 to 1 of the length), left, right (-1 to 1 of the half width). */
  readonly box: readonly [front: number, rear: number, left: number, right: number];
  readonly level: 'floor' | 'roof';
  readonly minutes: readonly [least: number, most: number];
  readonly after: readonly string[];
  readonly cautions: readonly Caution[];
}

type Row = [
  name: string,
  kind: PanelKind,
  box: PanelPlan['box'],
  minutes: PanelPlan['minutes'],
  after?: string[],
  cautions?: Caution[],
];

const floor = ([name, kind, box, minutes, after = [], cautions = []]: Row): PanelPlan => ({
  name,
  kind,
  box,
  level: 'floor',
  minutes,
  after,
  cautions,
});
const roof = (row: Row): PanelPlan => ({ ...floor(row), level: 'roof' });

/** Both sides of a panel drawn for the left; names in `after` that end in "left" follow to the right. */
const bothSides = (row: Row): PanelPlan[] => {
  const [name, kind, [front, rear, left, right], minutes, after = [], cautions = []] = row;
  const side = (word: string, box: PanelPlan['box']): PanelPlan =>
    floor([`${name} ${word}`, kind, box, minutes, after.map((each) => each.replace('left', word)), cautions]);
  return [side('left', [front, rear, left, right]), side('right', [front, rear, -right, -left])];
};

/** Panels every body has; times are common practice for a private car, no source. */
const cabin: readonly PanelPlan[] = [
  ...bothSides(['dash', 'dash', [0.26, 0.34, -0.95, -0.15], [12, 45]]),
  floor(['console', 'console', [0.33, 0.5, -0.15, 0.15], [8, 20]]),
  ...bothSides(['tread', 'sill', [0.34, 0.52, -1, -0.82], [2, 5]]),
  ...bothSides(['seat', 'seat', [0.4, 0.52, -0.75, -0.15], [8, 20], [], ['airbag']]),
  ...bothSides(['carpet', 'carpet', [0.32, 0.54, -0.82, -0.1], [10, 25], ['seat left', 'tread left']]),
  ...bothSides(['B-pillar', 'pillar', [0.5, 0.55, -1, -0.85], [5, 12], ['tread left'], ['belt-tensioner']]),
  roof(['headlining', 'headlining', [0.36, 0.72, -0.8, 0.8], [30, 70], [], ['airbag', 'two-people']]),
];

const rearCabin: readonly PanelPlan[] = [
  floor(['rear bench', 'seat', [0.58, 0.7, -0.75, 0.75], [5, 15]]),
  ...bothSides(['rear tread', 'sill', [0.54, 0.68, -1, -0.82], [2, 5]]),
  floor(['rear carpet', 'carpet', [0.54, 0.7, -0.82, 0.82], [10, 25], ['rear bench', 'rear tread left']]),
  ...bothSides(['quarter', 'quarter', [0.66, 0.82, -1, -0.7], [10, 25], ['rear bench', 'rear tread left']]),
];

const boot: readonly PanelPlan[] = [
  floor(['boot floor', 'boot-floor', [0.78, 0.96, -0.6, 0.6], [2, 6]]),
  floor(['rear sill cover', 'boot-side', [0.95, 1, -0.7, 0.7], [3, 6], ['boot floor']]),
  ...bothSides(['boot side', 'boot-side', [0.8, 0.97, -1, -0.6], [6, 15], ['rear sill cover']]),
];

const tailgate: readonly PanelPlan[] = [
  roof(['tailgate trim', 'tailgate', [0.9, 1, -0.6, 0.6], [5, 12]]),
  roof(['rear lining strip', 'headlining', [0.72, 0.9, -0.8, 0.8], [8, 20]]),
];

/** The panels of each body shape tried. */
export const panelPlans: Readonly<Partial<Record<BodyStyle, readonly PanelPlan[]>>> = {
  hatch: [...cabin, ...rearCabin, ...boot, ...tailgate],
  estate: [
    ...cabin,
    ...rearCabin,
    ...boot,
    ...tailgate,
    ...bothSides(['load rail', 'boot-side', [0.72, 0.8, -1, -0.7], [5, 12], ['quarter left']]),
  ],
  van: [
    ...cabin,
    floor(['bulkhead', 'other', [0.53, 0.56, -0.9, 0.9], [15, 40]]),
    floor(['load floor', 'boot-floor', [0.56, 0.98, -0.8, 0.8], [20, 45], ['bulkhead']]),
    ...bothSides(['load side', 'boot-side', [0.56, 0.78, -1, -0.8], [4, 10]]),
    ...bothSides(['rear load side', 'boot-side', [0.78, 0.98, -1, -0.8], [4, 10]]),
    roof(['load lining', 'headlining', [0.72, 1, -0.8, 0.8], [10, 25]]),
  ],
  pickup: [
    ...cabin,
    floor(['cab rear trim', 'other', [0.53, 0.57, -0.9, 0.9], [8, 20]]),
    ...bothSides(['under bed', 'underside', [0.57, 0.8, -1, 0], [5, 15], [], ['raised-vehicle']]),
    ...bothSides(['tail end', 'underside', [0.8, 1, -1, 0], [5, 12], [], ['raised-vehicle']]),
  ],
  coupe: [
    ...cabin,
    ...bothSides(['quarter', 'quarter', [0.58, 0.78, -1, -0.65], [12, 30], ['tread left']]),
    floor(['rear bench', 'seat', [0.58, 0.7, -0.65, 0.65], [5, 15]]),
    floor(['rear carpet', 'carpet', [0.54, 0.72, -0.82, 0.82], [8, 20], ['rear bench']]),
    ...boot,
  ],
};

/** Length and half width in mm of each shape, common proportions, no source. */
export const bodySizes: Readonly<Partial<Record<BodyStyle, readonly [lengthMm: number, halfMm: number]>>> = {
  hatch: [4_000, 850],
  estate: [4_700, 900],
  van: [5_300, 980],
  pickup: [5_200, 950],
  coupe: [4_300, 900],
};

/** The five shapes tried. */
export const triedShapes = [
  'hatch',
  'estate',
  'van',
  'pickup',
  'coupe',
] as const satisfies readonly BodyStyle[];
