import type { CircuitLine } from '../circuit/circuit-line.ts';
import { isLookOnly } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { EntryId } from '../quantity/id.ts';
import type { ProofCheck } from './closing-words.ts';
import type { EntryOf, JobEntry } from './job-document.ts';
import { sinceSearch } from './job-stage.ts';
import { looksSound } from './looks-sound.ts';
import { meterOf } from './meter-record.ts';
import { type SoundExpectation, soundExpectation } from './sound-expectation.ts';

/** One test that must come back good before a job is closed as proved. */
export interface ProofItem {
  readonly check: ProofCheck;
  /** The reading it repeats; null for those every job ends with. */
  readonly repeats: EntryOf<'reading'> | null;
  readonly expected: SoundExpectation;
  /** The newest try; null when there was none since the repair. */
  readonly done: EntryOf<'proof'> | null;
}

/**
 * The tests that show whether the repair cured the fault: each test of before that showed it, once however
 * often it was repeated, then the code, the function, the airbag lamp where a part with airbag or belt unit was off, and moving the loom where it failed. Tries from before
 * the newest repair do not count. On restraint and high-voltage circuits nothing is measured or moved.
 * @example
 * proofChecklist(sample.map, sample.line, sample.job.entries).map(({ check }) => check) // => ['code', 'function', 'move']
 */
export function proofChecklist(
  map: MapDocument,
  line: CircuitLine,
  entries: readonly JobEntry[],
): readonly ProofItem[] {
  const lastRepair = entries.findLastIndex((entry) => entry.type === 'repair');
  const tries = sinceSearch(entries.slice(lastRepair + 1), 'proof');
  const tested = lastRepair < 0 ? entries : entries.slice(0, lastRepair);
  const lookOnly = isLookOnly(line.circuit.duty);
  const before = tested.filter((entry) => entry.type === 'reading');
  const items: ProofItem[] = [];
  const seen = new Set<string>();
  for (const entry of tested) {
    if (entry.type !== 'reading' || entry.reading.test === 'move' || lookOnly) continue;
    const meter = meterOf(entry.meter);
    const expected = soundExpectation(map, line, entry.reading, entry.state, { meter, before });
    if (looksSound(expected, entry.reading, meter) === true) continue;
    const key = testKey(entry);
    if (seen.has(key)) continue;
    seen.add(key);
    items.push({ check: 'reading', repeats: entry, expected, done: lastTry(tries, 'reading', entry.id) });
  }
  items.push({ check: 'code', repeats: null, expected: { what: 'as-sound' }, done: lastTry(tries, 'code') });
  items.push({
    check: 'function',
    repeats: null,
    expected: { what: 'works' },
    done: lastTry(tries, 'function'),
  });
  if (airbagPartWasOff(map, entries)) {
    const done = lastTry(tries, 'airbag-lamp');
    items.push({ check: 'airbag-lamp', repeats: null, expected: { what: 'works' }, done });
  }
  if (lookOnly) return items;
  const moved = mostChanged(tested);
  items.push({
    check: 'move',
    repeats: moved,
    expected: { what: 'no-change' },
    done: lastTry(tries, 'move'),
  });
  return items;
}

/** The move test under which the fault came and went most often; the later of equals. */
function mostChanged(entries: readonly JobEntry[]): EntryOf<'reading'> | null {
  let most: EntryOf<'reading'> | null = null;
  let mostShare = 0;
  for (const entry of entries) {
    if (entry.type !== 'reading' || entry.reading.test !== 'move') continue;
    const share = entry.reading.changed / entry.reading.tried;
    if (share === 0 || share < mostShare) continue;
    most = entry;
    mostShare = share;
  }
  return most;
}

function airbagPartWasOff(map: MapDocument, entries: readonly JobEntry[]): boolean {
  return entries.some(
    (entry) =>
      entry.type === 'panel-off' &&
      (map.panels.get(entry.panelId)?.cautions ?? []).some(
        (caution) => caution === 'airbag' || caution === 'belt-tensioner',
      ),
  );
}

/**
 * Names a test: the same one is the same leads with the car standing the same; what it showed does not matter.
 * @example
 * testKey({ reading: { test: 'symptom', stays: true }, state: { ...bareState } }) === testKey({ reading: { test: 'symptom', stays: false }, state: { ...bareState } }) // => true
 */
export function testKey({ reading, state }: Pick<EntryOf<'reading'>, 'reading' | 'state'>): string {
  const { test, ...rest } = reading;
  const leads = Object.entries(rest).filter(([, value]) => typeof value === 'object');
  return JSON.stringify([test, leads, state]);
}

function lastTry(
  tries: readonly EntryOf<'proof'>[],
  check: ProofCheck,
  repeats?: EntryId,
): EntryOf<'proof'> | null {
  return tries.findLast((each) => each.check === check && (!repeats || each.repeats === repeats)) ?? null;
}

/**
 * Whether a try after the newest repair still showed the fault, so that the search should go on.
 * @example
 * faultStillThere(proofChecklist(sample.map, sample.line, sample.job.entries)) // => false
 */
export function faultStillThere(items: readonly ProofItem[]): boolean {
  return items.some(({ done }) => done !== null && !done.good);
}
