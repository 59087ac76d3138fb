import type { StarterStyle } from './body-proportions.ts';
import type { Caution, PanelKind } from './kinds.ts';

/** One panel a car of some body style usually has, before it is drawn. */
export interface PanelDefault {
  /** Short name that `offFirst` speaks of; the two sides of a pair begin with `left-` and `right-`. */
  readonly key: string;
  readonly name: string;
  readonly kind: PanelKind;
  readonly minutesOff: number;
  readonly minutesOn: number;
  /** Keys of panels that must be off before this one. */
  readonly offFirst: readonly string[];
  readonly cautions: readonly Caution[];
}

interface Row extends Omit<PanelDefault, 'offFirst' | 'cautions'> {
  readonly styles: readonly StarterStyle[];
  /** Comes once on the left and once on the right; `*` in `offFirst` is then the same side. */
  readonly pair?: true;
  readonly offFirst?: readonly string[];
  readonly cautions?: readonly Caution[];
}

const every = ['hatch', 'saloon', 'estate', 'van', 'pickup', 'coupe'] as const;
const withRearSeat = ['hatch', 'saloon', 'estate', 'pickup', 'coupe'] as const;
const fourDoor = ['hatch', 'saloon', 'estate', 'pickup'] as const;
const withTailgate = ['hatch', 'estate'] as const;
const withBoot = ['hatch', 'saloon', 'estate', 'coupe'] as const;

/**
 * Panels, minutes off and on, order and cautions: common practice, no source. Every figure is a guess
 * to begin from that the workshop's own times replace.
 */
const rows: readonly Row[] = [
  {
    key: 'glovebox',
    name: 'glovebox',
    kind: 'dash',
    minutesOff: 6,
    minutesOn: 8,
    styles: every,
    cautions: ['airbag'],
  },
  {
    key: 'lower-dash',
    name: 'lower dash panel',
    kind: 'dash',
    minutesOff: 6,
    minutesOn: 8,
    styles: every,
    cautions: ['airbag'],
  },
  {
    key: 'radio-trim',
    name: 'radio and vent trim',
    kind: 'dash',
    minutesOff: 15,
    minutesOn: 15,
    styles: every,
  },
  {
    key: 'console',
    name: 'centre console',
    kind: 'console',
    minutesOff: 20,
    minutesOn: 30,
    styles: every,
    cautions: ['airbag'],
  },
  {
    key: 'front-tread',
    name: 'front tread plate',
    kind: 'sill',
    pair: true,
    minutesOff: 3,
    minutesOn: 4,
    styles: every,
  },
  {
    key: 'rear-tread',
    name: 'rear tread plate',
    kind: 'sill',
    pair: true,
    minutesOff: 3,
    minutesOn: 4,
    styles: fourDoor,
  },
  {
    key: 'kick-trim',
    name: 'kick trim',
    kind: 'sill',
    pair: true,
    minutesOff: 4,
    minutesOn: 5,
    styles: every,
    offFirst: ['*-front-tread'],
  },
  {
    key: 'lower-b-trim',
    name: 'lower B trim',
    kind: 'pillar',
    pair: true,
    minutesOff: 8,
    minutesOn: 10,
    styles: every,
    offFirst: ['*-front-tread', '*-rear-tread'],
    cautions: ['belt-tensioner', 'airbag'],
  },
  {
    key: 'upper-b-trim',
    name: 'upper B trim',
    kind: 'pillar',
    pair: true,
    minutesOff: 8,
    minutesOn: 12,
    styles: every,
    offFirst: ['*-lower-b-trim'],
    cautions: ['belt-tensioner', 'airbag'],
  },
  {
    key: 'a-trim',
    name: 'A-pillar trim',
    kind: 'pillar',
    pair: true,
    minutesOff: 5,
    minutesOn: 8,
    styles: every,
    cautions: ['airbag', 'one-use-clips'],
  },
  {
    key: 'front-seat',
    name: 'front seat',
    kind: 'seat',
    pair: true,
    minutesOff: 15,
    minutesOn: 20,
    styles: every,
    cautions: ['airbag', 'belt-tensioner', 'battery', 'two-people'],
  },
  {
    key: 'half-carpet',
    name: 'carpet, half lift',
    kind: 'carpet',
    pair: true,
    minutesOff: 15,
    minutesOn: 20,
    styles: every,
    offFirst: ['*-front-seat', '*-front-tread', '*-kick-trim'],
  },
  {
    key: 'front-door-card',
    name: 'front door card',
    kind: 'door-card',
    pair: true,
    minutesOff: 12,
    minutesOn: 18,
    styles: every,
    cautions: ['airbag'],
  },
  {
    key: 'rear-door-card',
    name: 'rear door card',
    kind: 'door-card',
    pair: true,
    minutesOff: 12,
    minutesOn: 18,
    styles: fourDoor,
    cautions: ['airbag'],
  },
  {
    key: 'rear-seat-base',
    name: 'rear seat base',
    kind: 'seat',
    minutesOff: 4,
    minutesOn: 4,
    styles: withRearSeat,
  },
  {
    key: 'rear-seat-back',
    name: 'rear seat backrest',
    kind: 'seat',
    minutesOff: 12,
    minutesOn: 15,
    styles: withRearSeat,
    offFirst: ['rear-seat-base'],
    cautions: ['airbag'],
  },
  {
    key: 'rear-pillar-trim',
    name: 'rear pillar trim',
    kind: 'pillar',
    pair: true,
    minutesOff: 10,
    minutesOn: 12,
    styles: withRearSeat,
    offFirst: ['rear-seat-back'],
    cautions: ['airbag', 'belt-tensioner'],
  },
  {
    key: 'boot-floor',
    name: 'boot floor',
    kind: 'boot-floor',
    minutesOff: 4,
    minutesOn: 4,
    styles: withBoot,
  },
  {
    key: 'boot-sill',
    name: 'boot sill panel',
    kind: 'boot-floor',
    minutesOff: 6,
    minutesOn: 6,
    styles: withBoot,
    cautions: ['one-use-clips'],
  },
  {
    key: 'boot-side',
    name: 'boot side trim',
    kind: 'boot-side',
    pair: true,
    minutesOff: 15,
    minutesOn: 20,
    styles: withBoot,
    offFirst: ['boot-floor', 'boot-sill'],
    cautions: ['one-use-clips'],
  },
  {
    key: 'boot-lid-cover',
    name: 'boot lid cover',
    kind: 'tailgate',
    minutesOff: 8,
    minutesOn: 9,
    styles: ['saloon', 'coupe'],
    cautions: ['one-use-clips'],
  },
  {
    key: 'hinge-gaiter',
    name: 'hinge gaiter',
    kind: 'tailgate',
    minutesOff: 3,
    minutesOn: 5,
    styles: withTailgate,
    cautions: ['glass'],
  },
  {
    key: 'tailgate-surround',
    name: 'tailgate upper surround',
    kind: 'tailgate',
    minutesOff: 2,
    minutesOn: 3,
    styles: withTailgate,
    cautions: ['glass', 'one-use-clips'],
  },
  {
    key: 'tailgate-trim',
    name: 'tailgate trim',
    kind: 'tailgate',
    minutesOff: 8,
    minutesOn: 9,
    styles: withTailgate,
    offFirst: ['tailgate-surround'],
    cautions: ['glass', 'one-use-clips'],
  },
  {
    key: 'headlining-front',
    name: 'headlining front edge',
    kind: 'headlining',
    minutesOff: 10,
    minutesOn: 12,
    styles: every,
  },
  {
    key: 'headlining-rear',
    name: 'headlining rear edge',
    kind: 'headlining',
    minutesOff: 15,
    minutesOn: 20,
    styles: withRearSeat,
    cautions: ['airbag'],
  },
  {
    key: 'headlining-side',
    name: 'headlining side edge',
    kind: 'headlining',
    pair: true,
    minutesOff: 20,
    minutesOn: 25,
    styles: withRearSeat,
    offFirst: ['*-a-trim', '*-upper-b-trim', '*-rear-pillar-trim', 'headlining-front'],
    cautions: ['airbag', 'two-people'],
  },
  {
    key: 'ply-side',
    name: 'ply lining',
    kind: 'other',
    pair: true,
    minutesOff: 30,
    minutesOn: 35,
    styles: ['van'],
  },
  {
    key: 'step-trim',
    name: 'side door step trim',
    kind: 'sill',
    minutesOff: 6,
    minutesOn: 8,
    styles: ['van'],
  },
  {
    key: 'arch-liner',
    name: 'front arch liner',
    kind: 'arch-liner',
    pair: true,
    minutesOff: 15,
    minutesOn: 20,
    styles: every,
    cautions: ['raised-vehicle', 'one-use-clips'],
  },
  {
    key: 'undertray',
    name: 'undertray',
    kind: 'underside',
    minutesOff: 8,
    minutesOn: 10,
    styles: every,
    cautions: ['raised-vehicle'],
  },
  {
    key: 'bumper-cover',
    name: 'rear bumper cover',
    kind: 'other',
    minutesOff: 25,
    minutesOn: 35,
    styles: every,
  },
  {
    key: 'spare-wheel',
    name: 'spare wheel, lowered',
    kind: 'underside',
    minutesOff: 10,
    minutesOn: 10,
    styles: ['pickup', 'van'],
    cautions: ['raised-vehicle'],
  },
  {
    key: 'load-bed',
    name: 'load bed, lifted',
    kind: 'underside',
    minutesOff: 150,
    minutesOn: 150,
    styles: ['pickup'],
    cautions: ['two-people'],
  },
  {
    key: 'fuel-tank',
    name: 'fuel tank, lowered',
    kind: 'underside',
    minutesOff: 90,
    minutesOn: 90,
    styles: every,
    offFirst: ['undertray'],
    cautions: ['fuel', 'raised-vehicle', 'two-people'],
  },
  {
    key: 'battery',
    name: 'battery and tray',
    kind: 'other',
    minutesOff: 15,
    minutesOn: 20,
    styles: every,
    cautions: ['battery'],
  },
];

/**
 * The panels a body style usually has, in the order they stand in the table, sides written out. What
 * must be off first names only panels of the same set. Minutes are common practice, no source.
 * @example
 * panelDefaults('van').find((panel) => panel.key === 'left-lower-b-trim').offFirst // => ['left-front-tread']
 */
export function panelDefaults(style: StarterStyle): readonly PanelDefault[] {
  const drawn = rows.filter((row) => row.styles.includes(style)).flatMap(written);
  const keys = new Set(drawn.map((panel) => panel.key));
  return drawn.map((panel) => ({ ...panel, offFirst: panel.offFirst.filter((key) => keys.has(key)) }));
}

function written({ styles: _, pair, offFirst = [], cautions = [], ...row }: Row): readonly PanelDefault[] {
  if (!pair) {
    const name = row.name.charAt(0).toUpperCase() + row.name.slice(1);
    return [{ ...row, name, offFirst, cautions }];
  }
  return ['left', 'right'].map((side) => ({
    ...row,
    key: `${side}-${row.key}`,
    name: `${side === 'left' ? 'Left' : 'Right'} ${row.name}`,
    offFirst: offFirst.map((key) => key.replace('*', side)),
    cautions,
  }));
}
