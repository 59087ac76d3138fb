import type { CircuitState } from '#core/circuit/car-state.ts';
import type { ExpectedFigure, FigureUnit, NextTest, OutcomeLabel, TestOutcome } from '#core/job/next-test.ts';
import { sayMinutes, sayPercent } from './find.ts';
import { planSentence } from './readings.ts';
import { figureText, sayMillivolts, sayOhms, sayPicofarads } from './say-figure.ts';

/** How things and places are called in a sentence about a test. */
export interface TestNames {
  /** The user's name of a record. */
  readonly nameOf: (id: string) => string;
  /** A piece of the circuit from a landmark, by circuit station. */
  readonly sayPiece: (fromMm: number, toMm: number) => string;
}

export const testListWords = {
  title: 'Tests that pay before anything more comes off',
  none: 'No test is expected to save more minutes than it takes. Open up.',
  saves: (saved: string, minutes: string): string =>
    `saves about ${saved} min of searching beyond the ${minutes} min it takes`,
  reach: (panels: string): string => `To reach it take off ${panels} (counted in).`,
  better: 'Better still after the first opening below.',
  expected: (figure: string): string =>
    `With the fault where it is now thought most likely: about ${figure}.`,
} as const;

/** What to do, as one plain instruction. */
export function testInstruction(test: NextTest, { nameOf, sayPiece }: TestNames): string {
  const [a = '', b = ''] = test.nodeIds.map(nameOf);
  const [range] = test.ranges;
  const other = nameOf(test.other?.circuitId ?? '');
  const [otherA = '', otherB = ''] = (test.other?.nodeIds ?? []).map(nameOf);
  switch (test.kind) {
    case 'unplug':
      return `Part ${a} and see whether the fault stays.`;
    case 'move':
      return `Bend, press and tug the loom ${range ? sayPiece(range.fromMm, range.toMm) : ''} ten times while watching the fault.`;
    case 'drop':
      return `Put a small current in at ${a}, return at the body; read millivolts from ${a} to ${b}.`;
    case 'drop-both-ends':
      return `Put a small current in at ${a}, return at the body; read millivolts from ${a} to ${b}. Then the same with the current in at ${b}.`;
    case 'lamp-for-fuse':
      return `Lamp in place of the fuse at ${a}. Clamp the current; read millivolts from the lamp’s wire side at ${a} to ${b} with one long lead.`;
    case 'ohms-both-ends':
      return `Null the leads; read ohms to the body at ${a}, then at ${b}, on the same earth point.`;
    case 'beep-between':
      return `Beep from this wire at ${a} to the wire ${other} at ${otherA}: they should not touch.`;
    case 'ohms-between':
      return `Null the leads; read ohms from this wire at ${a} to the wire ${other} at ${otherA}${b ? `, then from ${b} to ${otherB}` : ''}.`;
    case 'drop-between':
      return `Put a small current in at ${a}, return on the wire ${other} at ${otherA}; read millivolts on this wire from ${a} to ${b}.`;
    case 'capacitance':
      return `Read capacitance to the body at ${a}, then at ${b}, everything else in the loom earthed.`;
    case 'beep':
      return `Beep the wire through, ${a} to ${b}.`;
  }
}

/** How the car must stand for it, and how current goes in without harm. */
export function testSetup(test: NextTest, { nameOf }: TestNames): string {
  const safe = test.injection ? ` ${planSentence(test.injection)}` : '';
  return `${stateSentence(test.state, nameOf)}${safe}`;
}

function stateSentence(
  { apartNodeIds, batteryConnected, ignitionOn }: CircuitState,
  nameOf: TestNames['nameOf'],
): string {
  const apart =
    apartNodeIds.length > 0 ? `${apartNodeIds.map(nameOf).join(' and ')} apart` : 'All plugged in';
  const supply = batteryConnected
    ? ignitionOn
      ? 'ignition on, hands clear of what may move'
      : 'battery on'
    : 'battery off, 0 V proved first';
  return `${apart}; ${supply}.`;
}

/** What one way it may come out means, and what then comes first. */
export function outcomeSentence(outcome: TestOutcome, names: TestNames): string {
  const means = `${outcomeWords(outcome.label, names)} (${sayPercent(outcome.probability)} %)`;
  return `${means}: ${thenWords(outcome, names)}`;
}

function outcomeWords(label: OutcomeLabel, { sayPiece }: TestNames): string {
  switch (label.what) {
    case 'stays':
      return 'It stays';
    case 'gone':
      return 'It is gone';
    case 'changes':
      return 'It changes';
    case 'no-change':
      return 'Nothing changes';
    case 'beeps':
      return 'It beeps';
    case 'silent':
      return 'Silent';
    case 'no-current':
      return 'No current flows';
    case 'lamp-dark':
      return 'The lamp stays dark';
    case 'open-line':
      return 'Open line';
    case 'no-steady-figure':
      return 'No steady figure';
    case 'figure': {
      const [from, to] = [figureWords(label.from, label.unit), figureWords(label.to, label.unit)];
      return `${from} to ${to}, so the fault is ${sayPiece(label.fromMm, label.toMm)}`;
    }
  }
}

function thenWords({ first, expectedMinutes }: TestOutcome, { nameOf }: TestNames): string {
  if (!first) return 'no place is left to open; suspect a part.';
  const off = first.takeOff.map(nameOf).join(', then ');
  const looks = [...first.segmentIds, ...first.nodeIds].slice(0, 3).map(nameOf).join(', ');
  const open = off ? `take off ${off} first` : `look at what is open first (${looks})`;
  return `${open}; found after about ${sayMinutes(expectedMinutes)} min.`;
}

/** The figure to look for, or null for a test without one. */
export function expectedSentence(expected: ExpectedFigure | null): string | null {
  return expected ? testListWords.expected(figureWords(expected.value, expected.unit)) : null;
}

/** Three figures are more than such a guess is worth. */
function figureWords(value: number, unit: FigureUnit): string {
  const rounded = Number(value.toPrecision(3));
  if (unit === 'millivolt') return figureText(sayMillivolts(rounded));
  if (unit === 'picofarad') return figureText(sayPicofarads(rounded));
  return `${figureText(sayOhms(rounded))} more at the first end`;
}
