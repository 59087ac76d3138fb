import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { JobEntry } from '#core/job/job-document.ts';
import type { Ranking } from '#core/job/ranking.ts';
import type { Circuit } from '#core/map/records.ts';
import { flatSentence, unusedWords } from '#renderer/language/readings.ts';
import { FindContext, type FindView } from '#renderer/places/find/find-context.ts';
import { evidenceBars } from '#renderer/places/find/readings/evidence-bars.ts';
import { NextTestPanel } from '#renderer/places/find/readings/next-test-panel.tsx';
import { ReadingEntry } from '#renderer/places/find/readings/reading-entry.tsx';
import { firstForm, readingTests } from '#renderer/places/find/readings/reading-form.ts';
import { stateLine } from '#renderer/places/find/readings/reading-line.ts';
import { narrowedShare, ReadingsLedger } from '#renderer/places/find/readings/readings-ledger.tsx';
import { unreadTests } from '#renderer/places/find/readings/test-cautions.tsx';
import { sample } from '#tests/sample.ts';
import { demoJobs } from './demo-jobs.ts';
import { readingView } from './reading-view.ts';

const shown = (view: FindView, part: ReactNode): string =>
  renderToStaticMarkup(<FindContext value={view}>{part}</FindContext>);
const said = (html: string): string => html.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');

const dead = {
  apartNodeIds: ['node:west', 'node:far'],
  switchClosed: null,
  ignitionOn: false,
  batteryConnected: false,
} satisfies Extract<JobEntry, { type: 'reading' }>['state'];
const head = { at: '2026-01-05T10:00:00Z', type: 'reading', state: dead, note: '' } as const;
const ohms = (id: JobEntry['id'], figure: number): JobEntry => ({
  ...head,
  id,
  reading: {
    test: 'ohms',
    from: { on: 'wire', nodeId: 'node:west' },
    to: { on: 'body' },
    ohms: figure,
  },
});
const drop = (id: JobEntry['id'], millivolts: number): JobEntry => ({
  ...head,
  id,
  reading: {
    test: 'drop',
    driven: { on: 'wire', nodeId: 'node:west' },
    sensed: { on: 'wire', nodeId: 'node:far' },
    currentA: 0.1,
    millivolts,
  },
});
const withRanking = (view: FindView, changes: Partial<Ranking>): FindView => ({
  ...view,
  open: { ...view.open, ranking: view.open.ranking && { ...view.open.ranking, ...changes } },
});

describe('the ledger of readings', () => {
  test('every reading is one line with its number, its car, its effect and two buttons', () => {
    const view = readingView({ entries: [ohms('entry:a', 0.3), drop('entry:b', 2)] });
    const html = shown(view, <ReadingsLedger />);
    expect(html.match(/class="ledger-line"/g)).toHaveLength(2);
    expect(html).toContain('Ohms, Door module to Body: 0.3 Ω');
    expect(html).toContain('Door module, Seat switch apart, ignition off, battery off');
    expect(html).toContain('aria-label="Put right: Ohms, Door module to Body: 0.3 Ω"');
    expect(html).toContain('aria-label="Take back: Ohms, Door module to Body: 0.3 Ω"');
    expect(html).toContain('Alone it says:');
  });

  test('a meter that cannot place the fault says so, and which way would and how closely', () => {
    const view = readingView({ entries: [ohms('entry:a', 0.3)] });
    const flat = view.open.ranking?.readings[0]?.flat;
    expect(flat?.why).toBe('two-wire-ohms');
    const words = said(shown(view, <ReadingsLedger />));
    expect(words).toContain('Alone it tells nothing about the place.');
    expect(words).toContain('An ordinary meter cannot place this');
    expect(words).toMatch(/A volt drop with current, taken from both ends, would, to about \d+ cm\./);
  });

  test('each way of telling nothing has its own whole sentence', () => {
    for (const why of ['two-wire-ohms', 'inside-one-access', 'fault-strength-unknown'] as const) {
      for (const better of ['drop', 'capacitance', 'unplug'] as const) {
        const sentence = flatSentence(
          { why, better, expectedSdMm: better === 'unplug' ? null : 120 },
          'metric',
        );
        expect(sentence).toMatch(/^Alone it tells nothing about the place\. [A-Z].+\. [A-Z].+\.$/);
      }
    }
  });

  test('a reading that is not used says why', () => {
    const together: JobEntry = {
      ...head,
      id: 'entry:a',
      state: { ...dead, apartNodeIds: [] },
      reading: { test: 'symptom', stays: true },
    };
    const view = readingView({ entries: [together] });
    expect(view.open.ranking?.readings[0]?.unused).toBe('nothing-apart');
    expect(shown(view, <ReadingsLedger />)).toContain(unusedWords['nothing-apart']);
  });

  test('readings that cannot both hold are named, with a way to each, in the ledger and over the list', () => {
    const view = readingView({ entries: [drop('entry:a', 1), drop('entry:b', 6)] });
    const found = view.open.ranking?.contradictions ?? [];
    expect(found.map(({ entryIds }) => [...entryIds].sort())).toEqual([['entry:a', 'entry:b']]);
    for (const part of [<ReadingsLedger key="ledger" />, <NextTestPanel key="next" />]) {
      const html = shown(view, part);
      expect(html).toContain('Readings 1 and 2 cannot all hold');
      expect(html).toContain('Look at reading 1');
      expect(html).toContain('Look at reading 2');
    }
    expect(evidenceBars(view).map(({ doubtful }) => doubtful)).toEqual([true, true]);
  });

  test('readings that agree are not accused', () => {
    const view = readingView({ entries: [drop('entry:a', 3), drop('entry:b', 3.05)] });
    expect(view.open.ranking?.contradictions).toEqual([]);
    expect(shown(view, <ReadingsLedger />)).not.toContain('Look at reading');
  });

  test('every reading has its bar, and one that tells nothing has an empty one', () => {
    const bars = evidenceBars(readingView({ entries: [ohms('entry:a', 0.3), drop('entry:b', 3)] }));
    expect(bars.map(({ label, pieces }) => [label, pieces.length > 0])).toEqual([
      ['1', false],
      ['2', true],
    ]);
  });

  test('one bit halves the ground', () => {
    expect(narrowedShare(1)).toBe(0.5);
    expect(narrowedShare(0)).toBe(0);
    expect(narrowedShare(-0.2)).toBe(0);
  });
});

describe('how the car stood', () => {
  test('a fuse is out, a plug is apart', () => {
    for (const { job, map } of demoJobs()) {
      const view = readingView({ map, job: { ...job, entries: [] } });
      const fuse = view.open.line?.circuit.ends.find(({ kind }) => kind === 'fused-supply')?.nodeId;
      if (!fuse) continue;
      expect(stateLine({ ...dead, apartNodeIds: [fuse] }, view)).toBe('fuse out, ignition off, battery off');
    }
    const view = readingView({});
    expect(stateLine({ ...dead, apartNodeIds: ['node:middle'], switchClosed: true }, view)).toBe(
      'Sill plug apart, switch closed, ignition off, battery off',
    );
    expect(stateLine({ ...dead, apartNodeIds: [] }, view)).toMatch(/^Nothing apart,/);
  });
});

describe('the test to do first', () => {
  /** The fresh jobs: nothing read, nothing opened. */
  const cars = demoJobs().map(({ job, map }) => readingView({ map, job: { ...job, entries: [] } }));
  const fresh = cars.filter(({ open }) => (open.ranking?.nextTests.length ?? 0) > 0);

  test('where none pays, as with a fault most likely behind airbag trim, it says that plainly', () => {
    const without = cars.filter((view) => !fresh.includes(view));
    expect(without.map(({ open }) => open.map.details.name)).toEqual(['Orlune Pivet, 5-door hatch, 2017']);
    for (const view of without) expect(said(shown(view, <NextTestPanel />))).toContain('No test is expected');
  });

  test('on the other sample cars it says what to do, how the car stands, what it saves and what each outcome means', () => {
    expect(fresh).toHaveLength(2);
    for (const view of fresh) {
      const best = view.open.ranking?.nextTests[0];
      const words = said(shown(view, <NextTestPanel />));
      expect(best, view.open.map.details.name).toBeDefined();
      expect(words).toContain('Test first');
      expect(words).toMatch(/saves [\d.]+ min/);
      expect(words).toMatch(/ignition on|battery on|battery off/);
      expect(words).toContain('Enter the reading');
      expect(best?.outcomes.length).toBeGreaterThan(1);
    }
  });

  test('a test at plugs names the wire’s colours and its pins', () => {
    const [view] = fresh;
    const test = view?.open.ranking?.nextTests[0];
    const circuit = view?.open.line?.circuit;
    if (!view || !test || !circuit) throw new Error('a sample car has a test');
    const nodeIds = circuit.ends.flatMap(({ nodeId }) => nodeId ?? []);
    const pins = circuit.pins.filter(({ nodeId }) => nodeIds.includes(nodeId));
    expect(pins.length).toBeGreaterThan(0);
    const atPlugs = withRanking(view, {
      nextTests: [{ ...test, kind: 'ohms-both-ends', nodeIds, ranges: [] }],
    });
    const words = said(shown(atPlugs, <NextTestPanel />));
    expect(words).toContain(circuit.wireColours.join('/'));
    for (const { pin } of pins) expect(words).toContain(`pin ${pin}`);
  });

  test('panels that must come off for it bring their cautions to the step', () => {
    const [view] = fresh;
    const test = view?.open.ranking?.nextTests[0];
    const guarded = [...(view?.open.map.panels.values() ?? [])].find(({ cautions }) =>
      cautions.includes('airbag'),
    );
    if (!view || !test || !guarded) throw new Error('a sample car has an airbag panel');
    const html = shown(
      withRanking(view, { nextTests: [{ ...test, takeOff: [guarded.id] }] }),
      <NextTestPanel />,
    );
    expect(html).toContain('aria-label="Before this step"');
    expect(said(html)).toContain(`First, to reach it: ${guarded.name}`);
  });

  test('when none pays it says so and sends nobody testing', () => {
    const words = said(shown(withRanking(readingView({}), { nextTests: [] }), <NextTestPanel />));
    expect(words).toContain('No test is expected to save more minutes than it takes.');
    expect(words).not.toContain('Enter the reading');
  });

  test('on airbag and high-voltage circuits there is no test and no form, only a refusal', () => {
    for (const duty of ['restraint', 'high-voltage'] as const) {
      const circuit: Circuit = { ...sample.circuit, duty };
      const map = { ...sample.map, circuits: new Map([[circuit.id, circuit]]) };
      const view = readingView({ map, reading: { key: 1, forms: [], replaces: null } });
      expect(shown(view, <NextTestPanel />)).toBe('');
      const form = shown(view, <ReadingEntry />);
      expect(form).not.toContain('<form');
      expect(form).not.toContain('<select');
      expect(said(form)).toMatch(/Airbag|High-voltage/);
    }
  });
});

describe('the cautions of a test', () => {
  const dropForm = firstForm('drop', {
    map: sample.map,
    line: sample.line,
    standing: [],
    meter: null,
    picked: null,
  });
  const entryForm = (form: typeof dropForm, entries: readonly JobEntry[] = []): string =>
    shown(readingView({ entries, reading: { key: 1, forms: [form], replaces: null } }), <ReadingEntry />);

  test('current into a wire says its limit in sight, loud until it was read in this job', () => {
    const loud = entryForm(dropForm);
    expect(said(loud)).toContain('0.1 A at most, 1 A fuse, 30 s');
    expect(loud).not.toContain('step-cautions-quiet');
    const read: JobEntry = {
      id: 'entry:read',
      at: head.at,
      type: 'caution-read',
      cautions: [],
      tests: ['current-in'],
    };
    expect(entryForm(dropForm, [read])).toContain('step-cautions-quiet');
    expect(unreadTests([{ code: 'hands-clear' }], [read])).toEqual(['moving-parts']);
    expect(unreadTests([{ code: 'unit-pins' }], [])).toEqual([]);
  });

  test('no current while an end is plugged in or the battery is on it', () => {
    const plugged = { ...dropForm, state: { ...dropForm.state, apartNodeIds: [] } };
    expect(said(entryForm(plugged))).toContain('No current yet: Unplug Door module and Seat switch first');
    const live = { ...dropForm, state: { ...dropForm.state, batteryConnected: true } };
    expect(said(entryForm(live))).toContain('Battery off first');
  });

  test('every kind opens with its car in words', () => {
    for (const kind of readingTests) {
      const form = firstForm(kind, {
        map: sample.map,
        line: sample.line,
        standing: [],
        meter: null,
        picked: null,
      });
      const words = said(entryForm(form));
      expect(words, kind).toMatch(/ignition (on|off), battery (on|off)|Apart: Seat switch/);
    }
  });
});
