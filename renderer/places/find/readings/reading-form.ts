import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { usualInjectionA } from '#core/circuit/safe-injection.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { isWatchedFromSecondEnd } from '#core/job/job-evidence.ts';
import type { MeterRecord } from '#core/job/meter-record.ts';
import type { CarState, Probe, Reading, Stretch } from '#core/job/reading.ts';
import { joinRanges } from '#core/locate/station-ranges.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { circuitRanges } from '../../../session/stretches-between.ts';
import type { Piece } from '../../../straight/straight-picture.ts';
import { plainFigure } from './parse-figure.ts';

export type ReadingTest = Reading['test'];
export type ReadingEntry = Extract<JobEntry, { type: 'reading' }>;

/** The order in which the tests are offered. */
export const readingTests = [
  'symptom',
  'move',
  'ohms',
  'beep',
  'volts',
  'drop',
  'capacitance',
  'function',
] as const satisfies readonly ReadingTest[];

/** A reading as it is being written down: text as typed, everything else as chosen. */
export interface ReadingForm {
  readonly test: ReadingTest;
  /** The first lead; for a drop, where current goes in; for capacitance, the one place. */
  readonly from: Probe;
  /** The second lead; for a drop, where it is sensed. */
  readonly to: Probe;
  readonly figure: string;
  /** What the meter showed instead of a figure. */
  readonly instead: 'open-line' | 'over-range' | null;
  readonly current: string;
  /** Beeps, stays, works; null until said. */
  readonly yes: boolean | null;
  readonly changed: string;
  readonly tried: string;
  /** What was moved, on the circuit's own ruler. */
  readonly pieces: readonly Piece[];
  /** What was moved on runs this circuit does not take; a reading put right keeps it. */
  readonly elsewhere: readonly Stretch[];
  readonly state: CarState;
  readonly meter: MeterRecord | null;
  readonly note: string;
}

/** What a form's first filling depends on. */
export interface FormGround {
  readonly map: MapDocument;
  readonly line: CircuitLine;
  readonly standing: readonly JobEntry[];
  readonly meter: MeterRecord | null;
  readonly picked: Piece | null;
}

/** Tests whose answer depends on the meter. */
export const meterTests: ReadonlySet<ReadingTest> = new Set(['ohms', 'beep', 'volts', 'drop', 'capacitance']);

/** Tests on a dead wire with nothing plugged in at its ends. */
const deadWire: ReadonlySet<ReadingTest> = new Set(['ohms', 'beep', 'capacitance']);

/** An empty form for one test: leads and car as at the last such test in this job, else as the test is usually done. */
export function firstForm(test: ReadingTest, ground: FormGround): ReadingForm {
  const { line, standing, picked, meter } = ground;
  const [near, far] = watchedEndFirst(line);
  const empty: ReadingForm = {
    test,
    from: { on: 'wire', nodeId: near },
    to: test === 'drop' ? { on: 'wire', nodeId: far } : { on: 'body' },
    figure: '',
    instead: null,
    current: '',
    yes: null,
    changed: '',
    tried: '10',
    pieces: picked ? [picked] : [],
    elsewhere: [],
    state: usualState(test, ground),
    meter: meterTests.has(test) ? meter : null,
    note: '',
  };
  const last = standing.findLast((entry) => entry.type === 'reading' && entry.reading.test === test);
  const isFeed = line.circuit.ends.some((end) => end.kind === 'fused-supply');
  if (last?.type !== 'reading') {
    return { ...empty, current: test === 'drop' && !isFeed ? String(usualInjectionA) : '' };
  }
  const before = formOf(last, line);
  // Two figures taken alike in all but the number, or the same again from the other end, start from the last.
  return { ...empty, from: before.from, to: before.to, state: before.state, current: before.current };
}

/** A kept reading as a form again, to be put right. */
export function formOf(entry: ReadingEntry, line: CircuitLine): ReadingForm {
  const { reading, state, meter, note } = entry;
  const [near] = watchedEndFirst(line);
  const form: ReadingForm = {
    test: reading.test,
    from: { on: 'wire', nodeId: near },
    to: { on: 'body' },
    figure: '',
    instead: null,
    current: '',
    yes: null,
    changed: '',
    tried: '',
    pieces: [],
    elsewhere: [],
    state,
    meter: meter ?? null,
    note,
  };
  switch (reading.test) {
    case 'ohms':
      return {
        ...form,
        from: reading.from,
        to: reading.to,
        ...(typeof reading.ohms === 'number'
          ? { figure: plainFigure(reading.ohms) }
          : { instead: reading.ohms }),
      };
    case 'beep':
      return { ...form, from: reading.from, to: reading.to, yes: reading.beeps };
    case 'volts':
      return { ...form, from: reading.from, to: reading.to, figure: plainFigure(reading.volts) };
    case 'drop':
      return {
        ...form,
        from: reading.driven,
        to: reading.sensed,
        figure: plainFigure(reading.millivolts),
        current: plainFigure(reading.currentA),
      };
    case 'capacitance':
      return { ...form, from: reading.at, figure: plainFigure(reading.picofarads) };
    case 'symptom':
      return { ...form, yes: reading.stays };
    case 'move':
      return {
        ...form,
        ...placeOf(reading.stretches, line),
        changed: String(reading.changed),
        tried: String(reading.tried),
      };
    case 'function':
      return { ...form, ...placeOf(reading.stretches, line), yes: reading.works };
  }
}

/** Stretches of runs on the circuit's own ruler, joined where they touch, and those it does not pass. */
function placeOf(
  stretches: readonly Stretch[],
  line: CircuitLine,
): Pick<ReadingForm, 'pieces' | 'elsewhere'> {
  const onLine = stretches.map((stretch) => ({ stretch, ranges: circuitRanges(line, stretch) }));
  return {
    pieces: joinRanges(onLine.flatMap(({ ranges }) => ranges.map(rounded))),
    elsewhere: onLine.filter(({ ranges }) => ranges.length === 0).map(({ stretch }) => stretch),
  };
}

/** To the thousandth of a millimetre, so that pieces of two runs meet where the runs do. */
const rounded = ({ fromMm, toMm }: Piece): Piece => ({
  fromMm: Number(fromMm.toFixed(3)),
  toMm: Number(toMm.toFixed(3)),
});

/** The circuit's end nodes, the one that feeds or watches the wire first. */
export function watchedEndFirst(line: CircuitLine): readonly [NodeId, NodeId] {
  const first = line.nodes[0]?.nodeId as NodeId;
  const last = line.nodes.at(-1)?.nodeId as NodeId;
  return isWatchedFromSecondEnd(line) ? [last, first] : [first, last];
}

function usualState(test: ReadingTest, { map, line }: FormGround): CarState {
  const isFeed = line.circuit.ends.some((end) => end.kind === 'fused-supply');
  const [near, far] = watchedEndFirst(line);
  const unpluggable = (id: NodeId): boolean => {
    const kind = map.nodes.get(id)?.kind;
    return kind !== undefined && kind !== 'ground-point' && kind !== 'branch' && kind !== 'splice';
  };
  const both = [near, far].filter(unpluggable);
  const rest = [far].filter(unpluggable);
  const live = { switchClosed: null, ignitionOn: true, batteryConnected: true };
  const dead = { switchClosed: null, ignitionOn: false, batteryConnected: false };
  if (deadWire.has(test)) return { apartNodeIds: both, ...dead };
  if (test === 'drop') return isFeed ? { apartNodeIds: rest, ...live } : { apartNodeIds: both, ...dead };
  if (test === 'symptom') return { apartNodeIds: rest, ...live };
  return { apartNodeIds: [], ...live };
}
