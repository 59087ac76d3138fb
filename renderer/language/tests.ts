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
  /** Places where a fuse feeds the circuit: there the fuse is out, nothing is apart. */
  readonly fuses: ReadonlySet<string>;
}

export const testListWords = {
  title: 'Tests that pay before anything more comes off',
  none: 'No test is expected to save more minutes than it takes. Open up.',
  saves: (saved: string, minutes: string): string =>
    `saves about ${saved} min of searching beyond the ${minutes} min it takes`,
  reach: (panels: string): string => `First, to reach it: ${panels} (counted in).`,
  better: 'Better still after the first opening below.',
  expected: (figure: string): string =>
    `With the fault where it is now thought most likely: about ${figure}.`,
} as const;

/** What to do, as one plain instruction. */
export function testInstruction(test: NextTest, { nameOf, sayPiece }: TestNames): string {
  const [a = '', b = ''] = test.nodeIds.map(nameOf);
  const [range] = test.ranges;
  const towards = nameOf(test.towardsId ?? '');
  // On a parted plug the half is named by where the wire on it goes: to the other lead, or where the piece ends.
  const half = (place: string, side: unknown, onward: string): string =>
    side ? `${place} (the half towards ${onward})` : place;
  const isBetweenPlugs = Boolean(test.sides[0] && test.sides[1]);
  const [halfA, halfB] = isBetweenPlugs ? [a, b] : [half(a, test.sides[0], b), half(b, test.sides[1], a)];
  const facing = isBetweenPlugs ? ', on the halves that face each other' : '';
  const other = nameOf(test.other?.circuitId ?? '');
  const [otherA = '', otherB = ''] = (test.other?.nodeIds ?? []).map(nameOf);
  switch (test.kind) {
    case 'unplug':
      return `Part ${a} and see whether the fault stays.`;
    case 'move':
      return `Bend, press and tug the loom ${range ? sayPiece(range.fromMm, range.toMm) : ''} ten times while watching ${
        test.state.batteryConnected
          ? 'the fault'
          : 'a meter on the wire: to the body for a short, end to end for a break'
      }.`;
    case 'drop':
      return `Put a small current in at ${halfA}, return at the body; read millivolts from there to ${halfB}${facing}.`;
    case 'drop-both-ends':
      return `Put a small current in at ${halfA}, return at the body; read millivolts from there to ${halfB}${facing}. Then the same with the current in at ${b}.`;
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
      return `Read capacitance to the body at ${halfA}, then at ${halfB}${facing}, everything else in the loom earthed.`;
    case 'beep':
      return `Beep the wire through, ${a} to ${b}.`;
    case 'ohms-to-body':
      return `Read ohms to the body at ${half(a, test.sides[0], towards)}: a sound piece shows open line.`;
    case 'ohms-through':
      return `Null the leads; read ohms through the wire from ${halfA} to ${halfB}${facing}.`;
    case 'ohms-between-at-plug':
      return `Read ohms at ${half(a, test.sides[0], towards)} from this wire to the wire ${other} beside it: sound wires show open line.`;
  }
}

/** How the car must stand for it, and how current goes in without harm. */
export function testSetup(test: NextTest, names: TestNames): string {
  const safe = test.injection ? ` ${planSentence(test.injection)}` : '';
  return `${stateSentence(test.state, names)}${safe}`;
}

function stateSentence(
  { apartNodeIds, batteryConnected, ignitionOn }: CircuitState,
  { nameOf, fuses }: TestNames,
): string {
  const plugs = apartNodeIds.filter((id) => !fuses.has(id)).map(nameOf);
  const apart = [
    ...(plugs.length > 0 ? [`${inWords(plugs)} apart`] : []),
    ...(plugs.length < apartNodeIds.length ? ['fuse out'] : []),
  ];
  const supply = batteryConnected
    ? ignitionOn
      ? 'ignition on, hands clear of what may move'
      : 'battery on'
    : 'battery off, 0 V proved first';
  const stands = apart.join(', ') || 'All plugged in';
  return `${stands.charAt(0).toUpperCase()}${stands.slice(1)}; ${supply}.`;
}

const inWords = (names: readonly string[]): string =>
  names.length > 2 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names.join(' and ');

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
    case 'to-body':
      return 'A path to the body, so the fault is on this piece';
    case 'touch':
      return 'A path from wire to wire, so they touch on this piece';
    case 'clear':
      return 'Open line, so this piece is clear';
    case 'broken':
      return 'Open line, so it is broken between the two';
    case 'through':
      return `Up to ${figureText(sayOhms(label.ohms))}, so the wire between is sound`;
    case 'too-much':
      return `More than ${figureText(sayOhms(label.ohms))}, so a bad joint or torn strands lie between`;
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
  const open = off ? `begin with ${off}` : `look at what is open first (${looks})`;
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
