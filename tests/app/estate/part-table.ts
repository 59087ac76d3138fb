import type { NodeKind } from '#core/map/kinds.ts';

/** A place on the car with its height, in mm. */
export type Spot = readonly [xMm: number, yMm: number, zMm: number];

/** A plug, part or branch of the invented estate. */
export interface DrawnPart {
  readonly name: string;
  readonly kind: NodeKind;
  readonly at: Spot;
  /** Panels that must be off to reach it. */
  readonly reach: readonly string[];
  readonly note?: string;
}

/** One kind after the other, as the kind is chosen once for several. */
export const estateParts: readonly DrawnPart[] = [
  { name: 'Fuse box', kind: 'fuse-box', at: [1220, -420, 520], reach: ['Lower dash panel, driver side'] },
  {
    name: 'Body module',
    kind: 'module',
    at: [1180, -690, 570],
    reach: ['Left kick trim'],
    note: 'Behind the left kick trim; black plug, 40 ways, is the near end for the body loom.',
  },
  { name: 'Radio', kind: 'module', at: [1420, 20, 690], reach: ['Radio and vent trim'] },
  { name: 'Airbag control unit', kind: 'module', at: [1640, 20, 130], reach: ['Centre console'] },
  {
    name: 'Tow module (added)',
    kind: 'module',
    at: [4120, -770, 420],
    reach: ['Left boot side trim'],
    note: 'Fitted afterwards. Its bracket sits at the side pocket end of the arch.',
  },
  { name: 'Left A foot plug', kind: 'inline-connector', at: [1390, -790, 110], reach: ['Left kick trim'] },
  { name: 'Right A foot plug', kind: 'inline-connector', at: [1390, 790, 110], reach: ['Right kick trim'] },
  { name: "Driver's seat plug", kind: 'inline-connector', at: [2080, -350, 140], reach: ['Left front seat'] },
  {
    name: 'Left rear door plug',
    kind: 'inline-connector',
    at: [2620, -890, 420],
    reach: ['Left lower B trim'],
  },
  {
    name: 'Right rear door plug',
    kind: 'inline-connector',
    at: [2620, 890, 420],
    reach: ['Right lower B trim'],
  },
  {
    name: 'Rear plug',
    kind: 'inline-connector',
    at: [4610, -500, 180],
    reach: ['Boot sill panel'],
    note: 'Grey, 16 ways, under the boot sill panel: the far end for the body loom.',
  },
  { name: 'Tow socket', kind: 'inline-connector', at: [4720, -120, 60], reach: ['Boot sill panel'] },
  {
    name: 'Left rear earth stud',
    kind: 'ground-point',
    at: [4180, -830, 360],
    reach: ['Left boot side trim'],
  },
  {
    name: 'Right rear earth stud',
    kind: 'ground-point',
    at: [4180, 830, 360],
    reach: ['Right boot side trim'],
  },
  { name: 'Tailgate hinge, left', kind: 'grommet', at: [4520, -210, 1460], reach: ['Headlining rear edge'] },
  { name: "Driver's belt buckle switch", kind: 'switch', at: [2350, -150, 330], reach: ['Left front seat'] },
  {
    name: 'Rear wiper motor',
    kind: 'switch',
    at: [4700, 0, 1000],
    reach: ['Tailgate trim'],
    note: 'Park contact inside the motor.',
  },
  { name: 'Fuel level sender', kind: 'sensor', at: [3120, 260, 190], reach: ['Rear seat base'] },
  { name: 'Front roof lamp', kind: 'load', at: [2000, 0, 1390], reach: ['Headlining front edge'] },
  { name: 'Right rear window motor', kind: 'load', at: [2900, 890, 460], reach: ['Right rear door card'] },
  { name: 'Left rear door speaker', kind: 'load', at: [2960, -890, 400], reach: ['Left rear door card'] },
  { name: 'Boot 12 V socket', kind: 'load', at: [4260, 750, 520], reach: ['Right boot side trim'] },
  { name: 'Boot roof lamp', kind: 'load', at: [4400, 60, 1470], reach: ['Headlining rear edge'] },
  { name: 'Heated rear glass tab', kind: 'load', at: [4630, -480, 1200], reach: ['Tailgate trim'] },
  { name: 'Left tail lamp', kind: 'load', at: [4640, -720, 780], reach: ['Left rear lamp cover'] },
  { name: 'Right tail lamp', kind: 'load', at: [4640, 720, 780], reach: ['Right rear lamp cover'] },
  { name: 'Number-plate lamp', kind: 'load', at: [4730, -180, 820], reach: ['Tailgate trim'] },
  { name: 'Left kick branch', kind: 'branch', at: [1160, -730, 460], reach: ['Left kick trim'] },
  {
    name: 'Fuse box branch',
    kind: 'branch',
    at: [1180, -490, 510],
    reach: ['Lower dash panel, driver side'],
  },
  { name: 'Dash branch, right', kind: 'branch', at: [1230, 480, 560], reach: ['Glovebox'] },
  { name: 'Dash branch', kind: 'branch', at: [1300, 40, 650], reach: ['Radio and vent trim'] },
  {
    name: 'Left A-pillar top',
    kind: 'branch',
    at: [2000, -530, 1330],
    reach: ['Left A-pillar trim', 'Headlining front edge'],
  },
  { name: 'Left B foot branch', kind: 'branch', at: [2560, -810, 90], reach: ['Left lower B trim'] },
  { name: 'Right B foot branch', kind: 'branch', at: [2560, 820, 90], reach: ['Right lower B trim'] },
  { name: 'Left rear seat corner', kind: 'branch', at: [3350, -690, 300], reach: ['Rear seat base'] },
  { name: 'Right rear seat corner', kind: 'branch', at: [3350, 690, 300], reach: ['Rear seat base'] },
  { name: 'Left side pocket branch', kind: 'branch', at: [4000, -700, 330], reach: ['Left boot side trim'] },
  { name: 'Right side pocket branch', kind: 'branch', at: [4000, 710, 330], reach: ['Right boot side trim'] },
  {
    name: 'Left D-pillar top',
    kind: 'branch',
    at: [4470, -560, 1420],
    reach: ['Left D-pillar trim', 'Headlining rear edge'],
  },
  { name: 'Tailgate branch', kind: 'branch', at: [4650, -200, 1180], reach: ['Tailgate trim'] },
];
