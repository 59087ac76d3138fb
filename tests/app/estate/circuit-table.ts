import type { CircuitDuty, CircuitEndKind } from '#core/map/kinds.ts';

/** A circuit of the invented estate, traced between two parts. */
export interface DrawnCircuit {
  readonly name: string;
  readonly colours: string;
  readonly mm2: number;
  readonly fuseA?: number;
  readonly duty?: CircuitDuty;
  readonly from: string;
  readonly to: string;
  /** What sits at an end, where it is not what usually does. */
  readonly fromKind?: CircuitEndKind;
  readonly toKind?: CircuitEndKind;
  readonly pins: readonly (readonly [part: string, pin: string])[];
  readonly note?: string;
}

export const estateCircuits: readonly DrawnCircuit[] = [
  {
    name: 'Rear wiper park wire',
    colours: 'black, violet',
    mm2: 0.75,
    from: 'Body module',
    to: 'Rear wiper motor',
    pins: [
      ['Body module', 'C17'],
      ['Left A foot plug', '6'],
      ['Rear plug', '9'],
      ['Rear wiper motor', '3'],
    ],
  },
  {
    name: 'Reverse-lamp feed',
    colours: 'blue, black',
    mm2: 0.75,
    from: 'Body module',
    to: 'Left tail lamp',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'C4'],
      ['Left A foot plug', '5'],
      ['Rear plug', '8'],
      ['Left tail lamp', '2'],
    ],
  },
  {
    name: 'Left tail lamp',
    colours: 'grey, black',
    mm2: 0.5,
    from: 'Body module',
    to: 'Left tail lamp',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'C9'],
      ['Left A foot plug', '11'],
      ['Rear plug', '3'],
      ['Left tail lamp', '4'],
    ],
  },
  {
    name: 'Number-plate lamp',
    colours: 'grey, red',
    mm2: 0.35,
    from: 'Body module',
    to: 'Number-plate lamp',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'C10'],
      ['Left A foot plug', '12'],
      ['Rear plug', '4'],
    ],
  },
  {
    name: 'Rear wiper feed',
    colours: 'green, white',
    mm2: 1,
    fuseA: 15,
    from: 'Fuse box',
    to: 'Rear wiper motor',
    toKind: 'load',
    pins: [
      ['Fuse box', '14'],
      ['Left A foot plug', '2'],
      ['Rear plug', '1'],
      ['Rear wiper motor', '1'],
    ],
  },
  {
    name: 'Heated rear glass',
    colours: 'black, yellow',
    mm2: 2.5,
    fuseA: 30,
    from: 'Fuse box',
    to: 'Heated rear glass tab',
    pins: [
      ['Fuse box', '4'],
      ['Left A foot plug', '1'],
      ['Rear plug', '2'],
    ],
  },
  {
    name: 'Tow module supply',
    colours: 'red, yellow',
    mm2: 2.5,
    fuseA: 20,
    from: 'Fuse box',
    to: 'Tow module (added)',
    toKind: 'other',
    pins: [
      ['Fuse box', '31'],
      ['Tow module (added)', '1'],
    ],
    note: 'Added afterwards.',
  },
  {
    name: 'Tow socket, left lamp',
    colours: 'black',
    mm2: 1.5,
    from: 'Tow module (added)',
    to: 'Tow socket',
    fromKind: 'high-side-driver',
    pins: [
      ['Tow module (added)', '7'],
      ['Tow socket', '7'],
    ],
    note: 'Added afterwards.',
  },
  {
    name: 'Tow module earth',
    colours: 'brown',
    mm2: 2.5,
    from: 'Tow module (added)',
    to: 'Left rear earth stud',
    fromKind: 'other',
    pins: [['Tow module (added)', '2']],
  },
  {
    name: 'Left rear door speaker',
    colours: 'violet, grey',
    mm2: 0.5,
    from: 'Radio',
    to: 'Left rear door speaker',
    fromKind: 'other',
    pins: [
      ['Radio', 'C7'],
      ['Left A foot plug', '18'],
      ['Left rear door plug', '2'],
    ],
  },
  {
    name: 'Right tail lamp',
    colours: 'grey, yellow',
    mm2: 0.5,
    from: 'Body module',
    to: 'Right tail lamp',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'D9'],
      ['Right A foot plug', '11'],
      ['Right tail lamp', '4'],
    ],
  },
  {
    name: 'Right tail lamp earth',
    colours: 'brown',
    mm2: 0.75,
    from: 'Right tail lamp',
    to: 'Right rear earth stud',
    pins: [['Right tail lamp', '6']],
  },
  {
    name: 'Boot 12 V socket',
    colours: 'red, green',
    mm2: 1.5,
    fuseA: 15,
    from: 'Fuse box',
    to: 'Boot 12 V socket',
    pins: [
      ['Fuse box', '9'],
      ['Right A foot plug', '3'],
      ['Boot 12 V socket', '1'],
    ],
  },
  {
    name: 'Right rear window motor',
    colours: 'red, blue',
    mm2: 2.5,
    from: 'Body module',
    to: 'Right rear window motor',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'A6'],
      ['Right A foot plug', '1'],
      ['Right rear door plug', '1'],
    ],
  },
  {
    name: 'Fuel level sender',
    colours: 'blue, orange',
    mm2: 0.35,
    from: 'Body module',
    to: 'Fuel level sender',
    pins: [
      ['Body module', 'D11'],
      ['Right A foot plug', '15'],
      ['Fuel level sender', '2'],
    ],
  },
  {
    name: 'Airbag control unit supply',
    colours: 'red, yellow',
    mm2: 0.75,
    fuseA: 10,
    duty: 'restraint',
    from: 'Fuse box',
    to: 'Airbag control unit',
    toKind: 'other',
    pins: [
      ['Fuse box', '22'],
      ['Airbag control unit', '5'],
    ],
    note: 'Belongs to the restraint system.',
  },
  {
    name: "Driver's belt buckle switch",
    colours: 'yellow, green',
    mm2: 0.35,
    duty: 'restraint',
    from: 'Airbag control unit',
    to: "Driver's belt buckle switch",
    pins: [
      ['Airbag control unit', '32'],
      ["Driver's seat plug", '2'],
      ["Driver's belt buckle switch", '1'],
    ],
    note: 'Belongs to the restraint system.',
  },
  {
    name: 'Front roof lamp',
    colours: 'white, blue',
    mm2: 0.35,
    from: 'Body module',
    to: 'Front roof lamp',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'E1'],
      ['Front roof lamp', '1'],
    ],
  },
  {
    name: 'Boot roof lamp',
    colours: 'white, green',
    mm2: 0.35,
    from: 'Body module',
    to: 'Boot roof lamp',
    fromKind: 'high-side-driver',
    pins: [
      ['Body module', 'E2'],
      ['Boot roof lamp', '1'],
    ],
  },
];
