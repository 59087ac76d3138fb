import type { OutlineKind } from '#core/map/kinds.ts';
import type { Place } from '../drawing-hand.ts';

/** A line of the invented estate's body, drawn by hand beside those the measured body gives. */
export interface DrawnOutline {
  readonly name: string;
  readonly kind: OutlineKind;
  readonly corners: readonly Place[];
  readonly closed?: true;
  /** Corners to round, counted from one. */
  readonly round?: readonly number[];
  /** Drawn on the left and mirrored. */
  readonly bothSides?: true;
}

export const estateOutlines: readonly DrawnOutline[] = [
  {
    name: 'Left front wheel',
    kind: 'other',
    corners: [
      [590, -670],
      [1210, -670],
      [1210, -870],
      [590, -870],
    ],
    closed: true,
    bothSides: true,
  },
  {
    name: 'Left rear wheel',
    kind: 'other',
    corners: [
      [3390, -670],
      [4010, -670],
      [4010, -870],
      [3390, -870],
    ],
    closed: true,
    bothSides: true,
  },
  {
    name: 'Left front door shut line',
    kind: 'other',
    corners: [
      [1410, -820],
      [1370, -910],
      [2560, -910],
      [2560, -850],
    ],
    bothSides: true,
  },
  {
    name: 'Left rear door shut line',
    kind: 'other',
    corners: [
      [2570, -910],
      [3330, -910],
      [3400, -840],
      [3500, -790],
    ],
    bothSides: true,
  },
  {
    name: 'Left door mirror',
    kind: 'other',
    corners: [
      [1640, -920],
      [1570, -1040],
      [1710, -1040],
      [1720, -920],
    ],
    round: [2, 3],
    bothSides: true,
  },
  {
    name: 'Left headlamp',
    kind: 'other',
    corners: [
      [90, -560],
      [200, -700],
      [400, -830],
      [250, -790],
      [120, -690],
    ],
    closed: true,
    bothSides: true,
  },
  {
    name: 'Left tail lamp',
    kind: 'other',
    corners: [
      [4510, -790],
      [4610, -720],
      [4670, -620],
      [4640, -600],
      [4570, -680],
    ],
    closed: true,
    bothSides: true,
  },
  {
    name: 'Left C-pillar',
    kind: 'pillar',
    corners: [
      [3440, -640],
      [3530, -640],
      [3530, -800],
      [3440, -800],
    ],
    closed: true,
    bothSides: true,
  },
  {
    name: 'Left load rail',
    kind: 'other',
    corners: [
      [3540, -470],
      [4540, -470],
      [4540, -500],
      [3540, -500],
    ],
    closed: true,
    bothSides: true,
  },
  {
    name: 'Bonnet shut line',
    kind: 'other',
    corners: [
      [1170, -780],
      [460, -710],
      [210, -590],
      [100, 0],
      [210, 590],
      [460, 710],
      [1170, 780],
    ],
    round: [3, 4, 5],
  },
  {
    name: 'Centre console',
    kind: 'other',
    corners: [
      [1520, -110],
      [2540, -100],
      [2580, 0],
      [2540, 100],
      [1520, 110],
    ],
    round: [3],
  },
  {
    name: 'Steering wheel',
    kind: 'other',
    corners: [
      [1700, -200],
      [1890, -390],
      [1700, -580],
      [1510, -390],
    ],
    closed: true,
    round: [1, 2, 3, 4],
  },
  {
    name: 'Spare wheel well',
    kind: 'other',
    corners: [
      [4110, -310],
      [4420, 0],
      [4110, 310],
      [3800, 0],
    ],
    closed: true,
    round: [1, 2, 3, 4],
  },
  {
    name: 'Tailgate',
    kind: 'other',
    corners: [
      [4510, -560],
      [4620, -600],
      [4720, -520],
      [4740, 0],
      [4720, 520],
      [4620, 600],
      [4510, 560],
    ],
    round: [3, 4, 5],
  },
];
