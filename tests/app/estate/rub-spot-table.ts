import type { RubSpotKind } from '#core/map/kinds.ts';
import type { RubSpot } from '#core/map/records.ts';
import type { Place } from '../drawing-hand.ts';

/** A rub spot of the invented estate: a point, or a line when it has more than one. */
export interface DrawnRubSpot {
  readonly name: string;
  readonly kind: RubSpotKind;
  readonly points: readonly Place[];
  readonly heightMm: number;
  readonly severity?: RubSpot['severity'];
  readonly side?: RubSpot['side'];
  readonly clearanceMm?: number;
  readonly note?: string;
}

export const estateRubSpots: readonly DrawnRubSpot[] = [
  {
    name: 'Left arch seam flange',
    kind: 'flange',
    points: [
      [3620, -650],
      [3670, -650],
      [3720, -660],
    ],
    heightMm: 421,
  },
  { name: 'Steering beam bracket', kind: 'bracket', points: [[1200, -190]], heightMm: 635 },
  { name: 'D-pillar weld', kind: 'burr', points: [[4560, -700]], heightMm: 817, severity: 1 },
  { name: 'Load rail screw', kind: 'fastener-tip', points: [[4250, -660]], heightMm: 120, side: 'above' },
  {
    name: 'Gaiter hinge bend',
    kind: 'hinge',
    points: [
      [4560, -160],
      [4580, -160],
      [4590, -160],
    ],
    heightMm: 1466,
    severity: 3,
    clearanceMm: 0,
  },
  { name: 'Bonnet lever screw', kind: 'fastener-tip', points: [[1200, -790]], heightMm: 265, severity: 1 },
  {
    name: 'Side pocket drain hole edge',
    kind: 'raw-edge',
    points: [[4030, -680]],
    heightMm: 275,
    severity: 1,
    side: 'below',
  },
  { name: 'Belt retractor bracket', kind: 'bracket', points: [[2620, -820]], heightMm: 77 },
  {
    name: 'Right arch seam flange',
    kind: 'flange',
    points: [
      [3620, 650],
      [3680, 650],
      [3730, 660],
    ],
    heightMm: 422,
  },
  { name: 'Roof edge bracket', kind: 'bracket', points: [[4460, -330]], heightMm: 1463, side: 'above' },
  { name: 'Hook of the seat base', kind: 'seat-mount', points: [[3130, -690]], heightMm: 164, side: 'above' },
  { name: 'Seat back latch bracket', kind: 'bracket', points: [[3440, -670]], heightMm: 370, severity: 1 },
  {
    name: 'Seat rail edge',
    kind: 'raw-edge',
    points: [[2190, -360]],
    heightMm: 204,
    severity: 3,
    side: 'below',
    clearanceMm: 6,
  },
  {
    name: 'Tool tray edge',
    kind: 'panel-edge',
    points: [[4440, -670]],
    heightMm: 117,
    side: 'above',
    note: 'Load on the boot floor presses the tray down here.',
  },
  {
    name: 'Tow module bracket (added)',
    kind: 'bracket',
    points: [
      [3870, -680],
      [3900, -690],
      [3930, -690],
    ],
    heightMm: 371,
    severity: 3,
    clearanceMm: 2,
    note: 'Added bracket at the side pocket end of the arch; screwed down over the loom.',
  },
  { name: 'Left tread plate clip pin', kind: 'fastener-tip', points: [[1960, -820]], heightMm: 22 },
  { name: 'Right tread plate clip pin', kind: 'fastener-tip', points: [[1990, 820]], heightMm: 46 },
  { name: 'Sun visor screw', kind: 'fastener-tip', points: [[2010, -320]], heightMm: 1368, side: 'above' },
  { name: 'Spare wheel well hole', kind: 'panel-edge', points: [[4370, -590]], heightMm: 152, side: 'below' },
];
