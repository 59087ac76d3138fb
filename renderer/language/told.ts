import type { CauseShare } from '#core/chafe/cause.ts';
import type { RecentWork, Symptom } from '#core/history/recent-work-table.ts';
import type { HistoryEffect } from '#core/job/history-effect.ts';
import type { MoveReason } from '#core/job/move-reason.ts';
import type { OpeningFirmness } from '#core/job/rank-sensitivity.ts';
import { sayMinutes, sayPercent } from './find.ts';
import { causeWords } from './hazard.ts';

export const recentWorkWords: Readonly<Record<RecentWork, string>> = {
  'tow-bar': 'Tow bar',
  audio: 'Radio or speakers',
  'alarm-or-tracker': 'Alarm or tracker',
  windscreen: 'Windscreen',
  'other-glass': 'Other glass',
  seat: 'Seat out and back',
  carpet: 'Carpet lifted',
  headlining: 'Headlining down',
  'ply-lining': 'Ply lining or racking',
  'crash-repair': 'Body repair',
  battery: 'Battery changed',
  underbody: 'Work from below',
};

export const symptomWords: Readonly<Record<Symptom, string>> = {
  'on-bumps': 'On bumps',
  'when-wet': 'When wet',
  'when-door-moves': 'When a door moves',
  'when-tailgate-moves': 'When the tailgate moves',
  'when-seat-moves': 'When a seat moves',
  'when-stepped-on': 'When stepped on',
  'when-loaded': 'When loaded',
  'when-hot': 'When hot',
};

const known: Readonly<Record<RecentWork | Symptom, string>> = { ...recentWorkWords, ...symptomWords };

/** An answer given at intake, as it is asked for. */
export const answerWord = (word: RecentWork | Symptom): string => known[word];

/** Sentences about what is known before the first reading, and about how firm the order is. */
export const toldWords = {
  title: 'Known beforehand',
  none: 'nothing asked',
  answers: (count: number): string => (count === 1 ? 'one answer' : `${count} answers`),
  withPast: 'past jobs',
  withoutPast: 'without past jobs',
  past: {
    label: 'Past jobs',
    use: 'Let past jobs change this order',
    count: (onMap: number, all: number): string =>
      `${countWords(onMap)} on this model, ${all} in all that teach something.`,
    empty: 'No closed job teaches anything about this loom yet.',
    failed: 'What past jobs teach could not be read. The order goes without them.',
    small: 'They change no cause on this circuit by more than half a percent.',
    hint: 'Share of the chance along the wire, before anything was measured on this car.',
  },
  intake: {
    label: 'Asked at intake',
    nobody: 'Nobody asked yet what was done to the car lately and when the fault shows.',
    nothing: 'Asked: nothing done lately, nothing it comes with.',
    change: 'Change the answers',
    nowhere: 'points to nothing on this circuit, so it changes nothing',
    everywhere: (length: string): string => `touches ${length}, and moves no opening by a whole percent`,
  },
  mostRaised: (opening: string, from: string, to: string): string =>
    `raises ${opening} most, from ${from} to ${to} %`,
  firm: {
    firm: (share: string): string =>
      `Firm: stands here in ${share} % of tries with the unsure figures changed`,
    either: (other: string): string => `Could be either: this or ${other}`,
    unsettled: 'Not settled: several could stand here',
    label: 'How firm the order is',
    hint: 'Some constants of the model are judgement. The order is tried up to two hundred times with those figures changed within what they may well be, all evidence staying as it is. The first three openings say how often each stood where it stands now.',
    open: (runs: string): string => `the open place at ${runs}`,
  },
  regret: {
    costs: (minutes: string): string => `To begin here instead costs ${minutes} min on average`,
    same: 'As good a start as the first',
    taken: (minutes: string): string => `Taken out of order: about ${minutes} min more on average`,
    takenSame: 'Taken out of order: as good a start as the first',
  },
  after: (what: string): string => `After “${what}”`,
  afterSome: (count: number): string => `After ${count} entries`,
  causes: {
    intake: 'intake changed',
    'past-jobs': 'past jobs read anew',
    'take-back': 'taken back',
    again: 'brought back',
  },
} as const;

/** Counts that begin a sentence are said as words while they are small. */
function countWords(count: number): string {
  return ['None', 'One', 'Two', 'Three', 'Four', 'Five', 'Six'][count] ?? String(count);
}

const finds = (count: number): string => `${countWords(count)} ${count === 1 ? 'find' : 'finds'}`;

/** Whose doing it is: finds on this model, finds of the same kind elsewhere, or looks that found nothing. */
function byWhom({ findsOnMap, findsOfKind }: Pick<HistoryEffect, 'findsOnMap' | 'findsOfKind'>, up: boolean) {
  if (up && findsOnMap > 0) return `${finds(findsOnMap)} on this model`;
  if (up && findsOfKind > 0) return `${finds(findsOfKind)} of this kind on other cars`;
  return up ? 'Past jobs' : 'Past jobs that found it elsewhere';
}

/** What past jobs did to one cause along the wire: “Two finds on this model raised ... from 6 to 19 %”. */
export function historySentence(effect: HistoryEffect, nameOf: (id: string) => string): string {
  const up = effect.after > effect.before;
  const cause: CauseShare = { cause: effect.cause, thing: effect.thing, share: effect.after, figures: {} };
  const [from, to] = [sayPercent(effect.before), sayPercent(effect.after)];
  const words = causeWords(cause, nameOf, 'metric');
  const name = effect.thing ? nameOf(effect.thing) : '';
  const phrase = words === name ? name : `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
  const what = name === '' || words.includes(name) ? `“${phrase}”` : `“${phrase}” at ${name}`;
  return `${byWhom(effect, up)} ${up ? 'raised' : 'lowered'} ${what} from ${from} to ${to} %.`;
}

/** The same for one opening. Null where it moved by less than a whole percent. */
export function openingHistorySentence(
  effect: Pick<HistoryEffect, 'findsOnMap' | 'findsOfKind'> | null,
  without: number,
  probability: number,
): string | null {
  if (sayPercent(without) === sayPercent(probability)) return null;
  const up = probability > without;
  const who = byWhom(effect ?? { findsOnMap: 0, findsOfKind: 0 }, up);
  return `${who} ${up ? 'raised' : 'lowered'} this from ${sayPercent(without)} to ${sayPercent(probability)} %.`;
}

/** What one answer at intake did to an opening it raised. Null where that is less than a whole percent. */
export function openingAnswerSentence(
  word: RecentWork | Symptom,
  without: number,
  probability: number,
): string | null {
  if (sayPercent(without) === sayPercent(probability)) return null;
  return `${answerWord(word)}: raised this from ${sayPercent(without)} to ${sayPercent(probability)} %.`;
}

/** How firm a place in the order is. */
export function firmSentence({ standing, opening }: OpeningFirmness, rival: string): string {
  if (standing === 'firm') return toldWords.firm.firm(sayPercent(opening.share));
  return standing === 'either' && rival !== '' ? toldWords.firm.either(rival) : toldWords.firm.unsettled;
}

/** Why an opening moved, in a few words for a bracket; empty when only others changed. */
export function moveWords({ why, before, after }: MoveReason): string {
  switch (why) {
    case 'likelier':
    case 'less-likely':
      return `chance ${sayPercent(before)} to ${sayPercent(after)} %`;
    case 'quicker':
    case 'slower':
      return `${sayMinutes(before)} to ${sayMinutes(after)} min`;
    case 'others':
      return '';
  }
}
