import type { ClipKind, Covering, SegmentTrait } from '#core/map/kinds.ts';
import type { Spot } from './part-table.ts';

/** Which stretch of a run a panel hides, in mm along it. */
export type Hidden = readonly [panel: string, fromMm: number, toMm: number | 'end'];

/** A run of the invented estate's loom, from part to part. */
export interface DrawnRun {
  readonly name: string;
  readonly route: string;
  readonly from: string;
  readonly to: string;
  readonly bends: readonly Spot[];
  readonly cover?: Covering;
  readonly bundleMm: number;
  readonly measuredMm?: number;
  /** How many clips, at even distances; other fixings are set by hand. */
  readonly clips?: number;
  /** `as-drawn`: what the drawn areas propose is right. */
  readonly hidden: 'as-drawn' | readonly Hidden[];
  readonly traits?: readonly SegmentTrait[];
  readonly note?: string;
}

export const estateRuns: readonly DrawnRun[] = [
  {
    name: 'Fuse box tail',
    route: 'Dash loom',
    from: 'Fuse box',
    to: 'Fuse box branch',
    bends: [],
    cover: 'fleece-tape',
    bundleMm: 18,
    hidden: 'as-drawn',
  },
  {
    name: 'Body module tail',
    route: 'Left body loom',
    from: 'Body module',
    to: 'Left kick branch',
    bends: [],
    bundleMm: 16,
    hidden: 'as-drawn',
  },
  {
    name: 'Fuse box branch to kick branch',
    route: 'Dash loom',
    from: 'Fuse box branch',
    to: 'Left kick branch',
    bends: [[1160, -620, 490]],
    cover: 'fleece-tape',
    bundleMm: 18,
    clips: 1,
    hidden: 'as-drawn',
  },
  {
    name: 'Left kick',
    route: 'Left body loom',
    from: 'Left kick branch',
    to: 'Left A foot plug',
    bends: [
      [1180, -800, 268],
      [1290, -830, 128],
    ],
    bundleMm: 17,
    clips: 3,
    hidden: 'as-drawn',
  },
  {
    name: 'Left sill',
    route: 'Left body loom',
    from: 'Left A foot plug',
    to: 'Left B foot branch',
    bends: [
      [1560, -860, 47],
      [1960, -800, 18],
      [2340, -860, 45],
    ],
    bundleMm: 16,
    clips: 6,
    hidden: [['Left front tread plate', 0, 'end']],
    traits: ['under-feet'],
  },
  {
    name: 'Left B foot to seat corner',
    route: 'Left body loom',
    from: 'Left B foot branch',
    to: 'Left rear seat corner',
    bends: [
      [2710, -850, 36],
      [2910, -810, 48],
      [3090, -710, 121],
      [3230, -660, 233],
    ],
    bundleMm: 15,
    clips: 5,
    hidden: [
      ['Left lower B trim', 0, 80],
      ['Left rear tread plate', 80, 460],
      ['Rear seat base', 460, 'end'],
    ],
  },
  {
    name: 'Left arch and side pocket',
    route: 'Left body loom',
    from: 'Left rear seat corner',
    to: 'Left side pocket branch',
    bends: [
      [3460, -650, 384],
      [3640, -650, 420],
      [3840, -680, 401],
    ],
    cover: 'fleece-tape',
    bundleMm: 14,
    hidden: [['Left boot side trim', 0, 'end']],
  },
  {
    name: 'Boot floor edge, left',
    route: 'Left body loom',
    from: 'Left side pocket branch',
    to: 'Rear plug',
    bends: [
      [4110, -660, 204],
      [4300, -660, 109],
      [4490, -680, 110],
      [4580, -620, 133],
    ],
    bundleMm: 13,
    clips: 5,
    hidden: [
      ['Boot floor', 0, 640],
      ['Boot sill panel', 640, 'end'],
    ],
    traits: ['wet'],
  },
  {
    name: 'Rear plug to left tail lamp',
    route: 'Left body loom',
    from: 'Rear plug',
    to: 'Left tail lamp',
    bends: [
      [4650, -600, 300],
      [4640, -690, 560],
    ],
    bundleMm: 8,
    clips: 3,
    hidden: [
      ['Boot sill panel', 0, 170],
      ['Left rear lamp cover', 170, 'end'],
    ],
  },
  {
    name: 'B foot to left rear door',
    route: 'Left body loom',
    from: 'Left B foot branch',
    to: 'Left rear door plug',
    bends: [
      [2540, -850, 240],
      [2570, -880, 380],
    ],
    cover: 'convoluted-tube',
    bundleMm: 8,
    measuredMm: 400,
    clips: 1,
    hidden: 'as-drawn',
    traits: ['crosses-hinge'],
  },
  {
    name: 'Left rear door plug to speaker',
    route: 'Left body loom',
    from: 'Left rear door plug',
    to: 'Left rear door speaker',
    bends: [
      [2720, -900, 470],
      [2850, -900, 440],
    ],
    bundleMm: 5,
    clips: 2,
    hidden: [['Left rear door card', 0, 'end']],
  },
  {
    name: 'Left side pocket to rear earth',
    route: 'Left body loom',
    from: 'Left side pocket branch',
    to: 'Left rear earth stud',
    bends: [[4080, -800, 350]],
    bundleMm: 5,
    clips: 1,
    hidden: 'as-drawn',
  },
  {
    name: 'Fuse box to dash branch',
    route: 'Dash loom',
    from: 'Fuse box branch',
    to: 'Dash branch',
    bends: [
      [1190, -260, 620],
      [1240, -80, 660],
    ],
    cover: 'fleece-tape',
    bundleMm: 20,
    clips: 3,
    hidden: [
      ['Lower dash panel, driver side', 0, 410],
      ['Radio and vent trim', 410, 'end'],
    ],
  },
  {
    name: 'Dash branch to radio',
    route: 'Dash loom',
    from: 'Dash branch',
    to: 'Radio',
    bends: [[1360, 50, 700]],
    cover: 'fleece-tape',
    bundleMm: 8,
    hidden: 'as-drawn',
  },
  {
    name: 'Dash branch to right side',
    route: 'Dash loom',
    from: 'Dash branch',
    to: 'Dash branch, right',
    bends: [
      [1250, 170, 660],
      [1210, 340, 600],
    ],
    cover: 'fleece-tape',
    bundleMm: 14,
    clips: 3,
    hidden: [
      ['Radio and vent trim', 0, 125],
      ['Glovebox', 125, 'end'],
    ],
  },
  {
    name: 'Dash branch to airbag control unit',
    route: 'Dash loom',
    from: 'Dash branch',
    to: 'Airbag control unit',
    bends: [
      [1390, 80, 480],
      [1520, 60, 200],
    ],
    cover: 'convoluted-tube',
    bundleMm: 9,
    clips: 2,
    hidden: [
      ['Radio and vent trim', 0, 470],
      ['Centre console', 470, 'end'],
    ],
  },
  {
    name: 'Dash right to right A foot',
    route: 'Right body loom',
    from: 'Dash branch, right',
    to: 'Right A foot plug',
    bends: [
      [1190, 600, 470],
      [1240, 750, 320],
      [1320, 820, 200],
    ],
    bundleMm: 16,
    clips: 3,
    hidden: [
      ['Glovebox', 0, 255],
      ['Right kick trim', 255, 'end'],
    ],
  },
  {
    name: 'Right sill',
    route: 'Right body loom',
    from: 'Right A foot plug',
    to: 'Right B foot branch',
    bends: [
      [1560, 840, 62],
      [1960, 800, 42],
      [2340, 850, 56],
    ],
    bundleMm: 14,
    clips: 6,
    hidden: [['Right front tread plate', 0, 'end']],
    traits: ['under-feet'],
  },
  {
    name: 'Right B foot to seat corner',
    route: 'Right body loom',
    from: 'Right B foot branch',
    to: 'Right rear seat corner',
    bends: [
      [2710, 860, 42],
      [2910, 810, 42],
      [3090, 710, 120],
      [3230, 650, 242],
    ],
    bundleMm: 12,
    clips: 5,
    hidden: [
      ['Right lower B trim', 0, 80],
      ['Right rear tread plate', 80, 460],
      ['Rear seat base', 460, 'end'],
    ],
  },
  {
    name: 'Right arch and side pocket',
    route: 'Right body loom',
    from: 'Right rear seat corner',
    to: 'Right side pocket branch',
    bends: [
      [3460, 650, 396],
      [3640, 650, 421],
      [3840, 680, 400],
    ],
    cover: 'fleece-tape',
    bundleMm: 11,
    clips: 4,
    hidden: [['Right boot side trim', 0, 'end']],
  },
  {
    name: 'Side pocket to right tail lamp',
    route: 'Right body loom',
    from: 'Right side pocket branch',
    to: 'Right tail lamp',
    bends: [
      [4200, 710, 380],
      [4440, 750, 560],
    ],
    bundleMm: 8,
    clips: 4,
    hidden: [
      ['Right boot side trim', 0, 530],
      ['Right D-pillar trim', 530, 'end'],
    ],
  },
  {
    name: 'Side pocket to boot socket',
    route: 'Right body loom',
    from: 'Right side pocket branch',
    to: 'Boot 12 V socket',
    bends: [[4100, 760, 400]],
    bundleMm: 5,
    clips: 2,
    hidden: 'as-drawn',
  },
  {
    name: 'Right side pocket to rear earth',
    route: 'Right body loom',
    from: 'Right side pocket branch',
    to: 'Right rear earth stud',
    bends: [[4080, 800, 350]],
    bundleMm: 5,
    clips: 1,
    hidden: 'as-drawn',
  },
  {
    name: 'B foot to right rear door',
    route: 'Right body loom',
    from: 'Right B foot branch',
    to: 'Right rear door plug',
    bends: [
      [2540, 860, 240],
      [2570, 880, 380],
    ],
    cover: 'convoluted-tube',
    bundleMm: 9,
    measuredMm: 400,
    clips: 1,
    hidden: 'as-drawn',
    traits: ['crosses-hinge'],
  },
  {
    name: 'Right rear door plug to window motor',
    route: 'Right body loom',
    from: 'Right rear door plug',
    to: 'Right rear window motor',
    bends: [
      [2720, 900, 480],
      [2820, 900, 480],
    ],
    bundleMm: 6,
    clips: 1,
    hidden: [['Right rear door card', 0, 'end']],
  },
  {
    name: 'Right seat corner to fuel sender',
    route: 'Right body loom',
    from: 'Right rear seat corner',
    to: 'Fuel level sender',
    bends: [
      [3290, 560, 260],
      [3210, 380, 200],
    ],
    bundleMm: 5,
    clips: 2,
    hidden: [['Rear seat base', 0, 'end']],
  },
  {
    name: 'Airbag control unit to seat plug',
    route: "Driver's seat loom",
    from: 'Airbag control unit',
    to: "Driver's seat plug",
    bends: [
      [1730, -130, 60],
      [1870, -270, 55],
      [2010, -340, 60],
    ],
    cover: 'fleece-tape',
    bundleMm: 8,
    clips: 3,
    hidden: [
      ['Centre console', 0, 160],
      ['Left front carpet, half lift', 160, 'end'],
      ['Left front seat', 360, 'end'],
    ],
  },
  {
    name: 'Seat plug to belt buckle',
    route: "Driver's seat loom",
    from: "Driver's seat plug",
    to: "Driver's belt buckle switch",
    bends: [
      [2160, -400, 190],
      [2260, -310, 230],
      [2310, -200, 260],
    ],
    cover: 'braided-sleeve',
    bundleMm: 6,
    measuredMm: 480,
    hidden: [['Left front seat', 0, 'end']],
    traits: ['slides-with-seat'],
  },
  {
    name: 'Left A-pillar',
    route: 'Roof loom',
    from: 'Body module',
    to: 'Left A-pillar top',
    bends: [
      [1300, -760, 640],
      [1500, -720, 850],
      [1740, -640, 1130],
    ],
    cover: 'fleece-tape',
    bundleMm: 8,
    clips: 5,
    hidden: [
      ['Left kick trim', 0, 400],
      ['Left A-pillar trim', 400, 'end'],
    ],
  },
  {
    name: 'Roof front, to the lamp',
    route: 'Roof loom',
    from: 'Left A-pillar top',
    to: 'Front roof lamp',
    bends: [
      [2020, -370, 1370],
      [1960, -170, 1390],
    ],
    cover: 'fleece-tape',
    bundleMm: 6,
    clips: 3,
    hidden: [['Headlining front edge', 0, 'end']],
  },
  {
    name: 'Roof side, left',
    route: 'Roof loom',
    from: 'Left A-pillar top',
    to: 'Boot roof lamp',
    bends: [
      [2200, -590, 1390],
      [2700, -610, 1440],
      [3500, -600, 1460],
      [4200, -560, 1470],
      [4400, -280, 1480],
    ],
    cover: 'fleece-tape',
    bundleMm: 6,
    clips: 10,
    hidden: [
      ['Left headlining side edge', 0, 2200],
      ['Headlining rear edge', 2200, 'end'],
    ],
  },
  {
    name: 'Left D-pillar',
    route: 'Tailgate loom',
    from: 'Rear plug',
    to: 'Left D-pillar top',
    bends: [
      [4560, -660, 360],
      [4590, -740, 640],
      [4540, -680, 960],
      [4500, -590, 1250],
    ],
    bundleMm: 10,
    clips: 6,
    hidden: [
      ['Boot sill panel', 0, 130],
      ['Left D-pillar trim', 130, 'end'],
    ],
  },
  {
    name: 'Roof rear edge, left',
    route: 'Tailgate loom',
    from: 'Left D-pillar top',
    to: 'Tailgate hinge, left',
    bends: [
      [4430, -470, 1440],
      [4470, -300, 1460],
    ],
    cover: 'fleece-tape',
    bundleMm: 10,
    clips: 3,
    hidden: [['Headlining rear edge', 0, 'end']],
  },
  {
    name: 'Heated glass to tailgate branch',
    route: 'Tailgate loom',
    from: 'Heated rear glass tab',
    to: 'Tailgate branch',
    bends: [],
    bundleMm: 5,
    clips: 1,
    hidden: [['Tailgate trim', 0, 'end']],
  },
  {
    name: 'Tailgate branch to wiper motor',
    route: 'Tailgate loom',
    from: 'Tailgate branch',
    to: 'Rear wiper motor',
    bends: [],
    bundleMm: 6,
    clips: 2,
    hidden: [['Tailgate trim', 0, 'end']],
  },
  {
    name: 'Left hinge gaiter',
    route: 'Tailgate loom',
    from: 'Tailgate hinge, left',
    to: 'Tailgate branch',
    bends: [
      [4540, -160, 1500],
      [4610, -160, 1440],
      [4630, -180, 1290],
    ],
    cover: 'convoluted-tube',
    bundleMm: 11,
    measuredMm: 400,
    hidden: [
      ['Left hinge gaiter', 0, 190],
      ['Tailgate trim', 190, 'end'],
    ],
    traits: ['crosses-hinge'],
  },
  {
    name: 'Tailgate branch to number-plate lamp',
    route: 'Tailgate loom',
    from: 'Tailgate branch',
    to: 'Number-plate lamp',
    bends: [
      [4680, -250, 1060],
      [4710, -230, 920],
    ],
    bundleMm: 4,
    clips: 1,
    hidden: [['Tailgate trim', 0, 'end']],
  },
  {
    name: 'Side pocket to tow module',
    route: 'Tow loom (added)',
    from: 'Left side pocket branch',
    to: 'Tow module (added)',
    bends: [[4040, -780, 380]],
    cover: 'convoluted-tube',
    bundleMm: 8,
    hidden: 'as-drawn',
    note: 'Added afterwards. Held by ties.',
  },
  {
    name: 'Tow module to tow socket',
    route: 'Tow loom (added)',
    from: 'Tow module (added)',
    to: 'Tow socket',
    bends: [
      [4300, -700, 200],
      [4480, -420, 60],
      [4620, -220, 40],
    ],
    cover: 'convoluted-tube',
    bundleMm: 9,
    hidden: [
      ['Left boot side trim', 0, 200],
      ['Boot sill panel', 740, 'end'],
    ],
    traits: ['wet'],
    note: 'Through the edge of the spare wheel well.',
  },
];

/** Fixings that are no plain clips or sit at uneven distances: set one by one at their places along a run, in mm. */
export const handSetFixings: readonly {
  readonly run: string;
  readonly kind: ClipKind;
  readonly stationsMm: readonly number[];
}[] = [
  { run: 'Left arch and side pocket', kind: 'clip', stationsMm: [100, 290, 480, 670] },
  { run: 'Left hinge gaiter', kind: 'edge-clip', stationsMm: [8, 200] },
  { run: 'Seat plug to belt buckle', kind: 'tie', stationsMm: [60, 330] },
  { run: 'Tow module to tow socket', kind: 'tie', stationsMm: [140, 380, 640] },
];

/** The one of them that this model lacks, over the wheel arch. */
export const missingFixing = { run: 'Left arch and side pocket', stationMm: 480 } as const;

/** A panel painted along a run that few areas lie over alike, and the stretch it hides, in mm. */
export const paintedPanel = {
  run: 'Tow module to tow socket',
  panel: 'Boot floor',
  fromMm: 200,
  toMm: 740,
} as const;
