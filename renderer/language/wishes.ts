import type { PanelWish } from '#core/job/wish-entries.ts';

/** What may be wished of a panel, as a choice and as a line of the record. */
export const panelWishWords: Readonly<Record<PanelWish, string>> = {
  'as-planned': 'As the list has it',
  'stays-on': 'Not today',
  'out-anyway': 'Coming out anyway',
};

/** Every sentence about wishes for the order of opening up. */
export const wishWords = {
  title: 'Wishes for this order',
  none: 'no wishes',
  some: (count: number): string => (count === 1 ? 'one wish' : `${count} wishes`),
  time: {
    label: 'Minutes for looking',
    hint: 'The list then holds what gives the best chance within them.',
    none: 'No limit',
    other: 'Other',
    keep: 'Set minutes',
    wrong: 'Enter minutes from 1 to 1440, or choose no limit.',
    quick: (minutes: number): string => `${minutes} min`,
    /** Read out over the list. */
    holds: (minutes: number): string => `What can be seen within ${minutes} minutes`,
    nothing: (minutes: number): string =>
      `Nothing can be opened and looked at within ${minutes} minutes. Allow more, or mark off what is off already.`,
    seen: 'chance of seeing the fault, in',
    best: 'No other choice within that time sees it more likely.',
    nearly: (percent: string): string => `No choice can have more than ${percent} %.`,
  },
  panels: {
    label: 'Panels in the way',
    hint: 'What is off already costs nothing; what stays on is gone round or left out.',
    off: 'Off already',
    notToday: 'Not today',
    notTodayFor: (panel: string): string => `${panel}: not today`,
    anyway: 'anyway',
    asPlannedFor: (panel: string): string => `${panel}: off after all, back in the plan`,
  },
  either: {
    label: 'Either of two will do',
    hint: 'Where two panels hide the same places and one of them is enough.',
    choose: 'Two panels',
    add: 'One is enough',
    drop: 'Both needed',
    pair: (one: string, other: string): string => `${one} or ${other}`,
  },
  leftOut: (percent: string): string =>
    `Left out of this order, behind panels that stay on today: ${percent} % of the chance.`,
  stayOn: {
    label: 'Staying on today',
    back: (panel: string): string => `${panel}: off after all`,
    title: 'Nothing left to open today',
    hint: 'Let one of the panels that stay on come off after all, or suspect a part, a plug or another circuit.',
  },
  record: {
    panel: (wish: PanelWish, panel: string): string => `${panelWishWords[wish]}: ${panel}`,
    either: (one: string, other: string): string => `Either will do: ${one} or ${other}`,
    notEither: (one: string, other: string): string => `Both needed: ${one} and ${other}`,
    time: (minutes: number): string => `Minutes for looking: ${minutes}`,
    noLimit: 'No limit on the minutes for looking',
    pastOn: 'Past jobs used for this order',
    pastOff: 'Past jobs left out of this order',
  },
} as const;
