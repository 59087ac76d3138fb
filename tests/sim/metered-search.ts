import { circuitComponents } from '#core/job/circuit-components.ts';
import { digLooks, type PlacedLook } from '#core/job/dig-looks.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import type { NextTest, NextTestKind } from '#core/job/next-test.ts';
import { drawnStretches, pathStretches } from '#core/job/path-stretches.ts';
import { rankOnLine } from '#core/job/rank-on-line.ts';
import type { Ranking } from '#core/job/ranking.ts';
import { createReadingsCache } from '#core/job/readings-cache.ts';
import { cumulate } from '#core/locate/cumulative.ts';
import { offClosure } from '#core/map/panel-order.ts';
import type { NodeId, PanelId } from '#core/quantity/id.ts';
import { askedReadings } from './asked-readings.ts';
import type { SearchStart } from './cleared-ends.ts';
import type { DrawnCar } from './drawn-car.ts';
import type { FaultyWire } from './faulty-wire.ts';
import { type NewEntry, numberedEntry, searchedJob } from './searched-job.ts';

/** How one search of one car went. */
export interface SearchOutcome {
  readonly minutes: number;
  /** Seen with trim taken off once at most. */
  readonly atFirstOpening: boolean;
}

/** How a search by the tool went. */
export interface MeteredOutcome extends SearchOutcome {
  readonly tests: readonly NextTestKind[];
  /** Minutes of the tests, with what came off to reach them. */
  readonly testMinutes: number;
  /** What was believed before the first place was looked at. */
  readonly before: Ranking;
  /** Why a search ended without a find; a search never goes on for ever. */
  readonly givenUp: boolean;
}

/** Looks after which a search is broken off. */
const mostLooks = 400;

/** Draws of what readings share: fewer than in use, for time. */
const readingDraws = 24;

const usualQuality = 0.9;

/**
 * The car searched by the tool as a technician uses it: before more trim comes off the tool is asked, and
 * the test it puts first is done, if any and if it does not say to open first; else the first place of
 * its order is looked at, and after every look the order is made anew. `notices` says of each look at the
 * true place in turn whether it shows the fault.
 */
export function meteredSearch(
  car: DrawnCar,
  wire: FaultyWire,
  notices: readonly boolean[],
  start: SearchStart,
  options: { readonly withMeter: boolean },
): MeteredOutcome {
  const search = new Search(car, wire, notices, start);
  for (let looks = 0; looks < mostLooks; ) {
    const test = options.withMeter && search.asksBeforeOpening() ? search.bestTest() : null;
    if (test) search.doTest(test);
    else {
      looks++;
      if (search.lookAtFirst()) return search.outcome(false);
    }
  }
  return search.outcome(true);
}

class Search {
  readonly #car: DrawnCar;
  readonly #wire: FaultyWire;
  readonly #notices: readonly boolean[];
  readonly #cache = createReadingsCache();
  readonly #looks: ReadonlyMap<string, PlacedLook>;
  readonly #entries: JobEntry[] = [];
  readonly #off = new Set<PanelId>();
  readonly #done: string[] = [];
  readonly #tests: NextTestKind[] = [];
  #minutes = 0;
  #testMinutes = 0;
  #timesOpened = 0;
  #looksAtPlace = 0;
  #before: Ranking | null = null;
  #ranking: Ranking | null = null;
  #order: readonly string[] | undefined;

  constructor(car: DrawnCar, wire: FaultyWire, notices: readonly boolean[], start: SearchStart) {
    this.#car = car;
    this.#wire = wire;
    this.#notices = notices;
    this.#looks = placesOf(car);
    this.#entries.push(...start.entries);
    for (const panelId of start.off) this.#off.add(panelId);
  }

  /** Nothing more is asked while the next place already lies open. */
  asksBeforeOpening(): boolean {
    return this.#minutes === 0 || this.#missing(this.#next()).length > 0;
  }

  bestTest(): NextTest | null {
    const { nextTests } = this.#rank(true);
    const [best] = nextTests.filter((test) => !this.#done.includes(keyOf(test)));
    return best && !best.betterAfterOpening ? best : null;
  }

  doTest(test: NextTest): void {
    this.#minutes += test.minutes;
    this.#testMinutes += test.minutes;
    this.#tests.push(test.kind);
    this.#done.push(keyOf(test));
    if (test.takeOff.length > 0) this.#timesOpened++;
    for (const panelId of test.takeOff) this.#takeOff(panelId);
    for (const { reading, state } of askedReadings(test, this.#wire))
      this.#record({
        type: 'reading',
        reading,
        state: { ...state, apartNodeIds: [...state.apartNodeIds] },
        note: '',
      });
  }

  /** Looks at the place that is first now; true when the fault is seen. */
  lookAtFirst(): boolean {
    const look = this.#next();
    this.#before ??= this.#rank(false);
    const missing = this.#missing(look);
    if (missing.length > 0) this.#timesOpened++;
    for (const panelId of missing) {
      this.#minutes += this.#car.map.panels.get(panelId)?.minutesOff ?? 0;
      this.#takeOff(panelId);
    }
    this.#minutes += look.minutes;
    if (holds(look, this.#wire.trueMm) && this.#notices[this.#looksAtPlace++]) return true;
    this.#record({
      type: 'inspection',
      stretches: drawnStretches(this.#car.line, [look]),
      ...(look.nodeId ? { nodeIds: [look.nodeId] satisfies NodeId[] } : {}),
      result: 'seen-sound',
      lookQuality: look.nodeId ? look.quality : usualQuality,
      note: '',
    });
    return false;
  }

  outcome(givenUp: boolean): MeteredOutcome {
    return {
      minutes: this.#minutes,
      atFirstOpening: !givenUp && this.#timesOpened <= 1,
      tests: this.#tests,
      testMinutes: this.#testMinutes,
      before: this.#before as Ranking,
      givenUp,
    };
  }

  #next(): PlacedLook {
    const [name = ''] = this.#rank(false).lookOrder ?? [];
    const look = this.#looks.get(name.replace(/ \((again|half)\)$/, ''));
    if (!look) throw new Error(`the order names no place: ${name}`);
    return look;
  }

  #missing(look: PlacedLook): PanelId[] {
    return [...offClosure(this.#car.map.panels, look.panelIds)].filter((id) => !this.#off.has(id));
  }

  #takeOff(panelId: PanelId): void {
    this.#off.add(panelId);
    this.#record({ type: 'panel-off', panelId });
  }

  #record(entry: NewEntry): void {
    this.#entries.push(numberedEntry(entry, this.#entries.length));
    this.#ranking = null;
  }

  #rank(withTests: boolean): Ranking {
    const { map, line, field } = this.#car;
    if (this.#ranking && !withTests) return this.#ranking;
    this.#ranking = rankOnLine(map, line, field, searchedJob(this.#car, this.#entries), {
      readingDraws,
      readingsCache: this.#cache,
      withTests,
      keepOrder: this.#order,
    });
    this.#order = this.#ranking.lookOrder;
    return this.#ranking;
  }
}

const keyOf = ({ kind, nodeIds, sides, towardsId, ranges }: NextTest): string =>
  JSON.stringify([kind, nodeIds, sides, towardsId, ranges]);

const holds = ({ nodeId, fromMm, toMm }: PlacedLook, stationMm: number): boolean =>
  nodeId === null && fromMm <= stationMm && stationMm < toMm;

function placesOf({ map, line, field }: DrawnCar): ReadonlyMap<string, PlacedLook> {
  const parts = circuitComponents(map, line).map(({ part }) => part);
  const even = cumulate(field.cellEdgesMm, new Float64Array(field.cellEdgesMm.length - 1).fill(1));
  const looks = digLooks(map, pathStretches(line), { components: [] }, even, parts);
  return new Map(looks.map((look) => [look.id, look]));
}

/** A simple order followed on the same car with the same eyes; gone over again until the fault is seen. */
export function orderedSearch(
  steps: readonly { readonly minutes: number; readonly look: PlacedLook }[],
  trueMm: number,
  notices: readonly boolean[],
): SearchOutcome {
  let minutes = 0;
  let opened = 0;
  let looksAtPlace = 0;
  for (let round = 0; round < notices.length; round++)
    for (const { minutes: spent, look } of steps) {
      if (round === 0 && spent > look.minutes) opened++;
      minutes += round === 0 ? spent : look.minutes;
      if (holds(look, trueMm) && notices[looksAtPlace++]) return { minutes, atFirstOpening: opened <= 1 };
    }
  return { minutes, atFirstOpening: false };
}
