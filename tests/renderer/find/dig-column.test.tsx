import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { cautionsRead } from '#core/job/cautions-read.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { type Caution, cautions } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { cautionKeyWords, cautionSentences, grave, sayPercent } from '#renderer/language/find.ts';
import { sayWhere } from '#renderer/language/say-where.ts';
import { cautionWords } from '#renderer/language/words.ts';
import { DigColumn } from '#renderer/places/find/dig-column.tsx';
import { entryLine } from '#renderer/places/find/entry-line.ts';
import { FindContext, type FindView } from '#renderer/places/find/find-context.ts';
import { lookQualities, nearestLookQuality } from '#renderer/places/find/look-quality.ts';
import { RefitCount } from '#renderer/places/find/refit-count.tsx';
import { StepCautions } from '#renderer/places/find/step-cautions.tsx';
import { jobSession } from '#renderer/session/job-session.ts';
import { sample } from '#tests/sample.ts';

const at = '2026-01-05T10:00:00Z';
const nothing = (): void => {};

/** The rear run hangs in the open and was seen sound, so that the first opening is one with a panel. */
const openRunSeen: JobEntry = {
  id: 'entry:open-run',
  at: '2026-01-05T09:30:00Z',
  type: 'inspection',
  stretches: [{ segmentId: 'segment:rear', fromMm: 0, toMm: 500 }],
  result: 'seen-sound',
  lookQuality: 1,
  note: '',
};

function viewOf(changes: {
  readonly map?: MapDocument;
  readonly entries?: readonly JobEntry[];
  readonly cautionsRead?: readonly Caution[];
  readonly circuitId?: null;
}): FindView {
  const map = changes.map ?? sample.map;
  const job = {
    ...sample.job,
    entries: [...(changes.entries ?? [])],
    ...(changes.circuitId === null ? { circuitId: null } : {}),
  };
  const circuit = job.circuitId === null ? undefined : map.circuits.get(job.circuitId);
  const laid = circuit ? layStraight(map, circuit) : null;
  const line = laid?.ok ? laid.value : null;
  const ranked = rank(map, job);
  return {
    session: jobSession('job:tiny', {
      client: async () => ({ ok: false, problem: { code: 'no-answer', detail: '' } }),
    }),
    open: {
      job,
      map,
      line,
      ranking: ranked.ok ? ranked.value : null,
      rankingBefore: null,
      changedBy: [],
      firmness: null,
      past: null,
      rankProblem: ranked.ok ? null : ranked.problem,
      thinking: false,
      saving: 'saved',
      saveProblem: null,
    },
    standing: standingEntries(job),
    lengths: 'metric',
    say: (name) => name,
    where: ({ fromMm, toMm }) => sayWhere(map, line ?? sample.line, fromMm, toMm, 'metric'),
    pointed: [],
    pointedEntry: null,
    point: nothing,
    picked: null,
    pick: nothing,
    cautionsRead: new Set(changes.cautionsRead),
    reading: null,
    openReading: nothing,
    closeReading: nothing,
  };
}

const shown = (
  view: FindView,
  part: ReactNode = <DigColumn onOpenMap={nothing} onIntake={nothing} onAnother={nothing} />,
): string => renderToStaticMarkup(<FindContext value={view}>{part}</FindContext>);

/** The sample with its tread plate under some cautions, and the circuit of a duty. */
const mapWith = (on: readonly Caution[], duty: 'ordinary' | 'restraint' = 'ordinary'): MapDocument => ({
  ...sample.map,
  panels: new Map([...sample.map.panels].map(([id, panel]) => [id, { ...panel, cautions: [...on] }])),
  circuits: new Map([[sample.circuit.id, { ...sample.circuit, duty }]]),
});

describe('the list of where to open first', () => {
  test('the first opening stands open with its panels, its place and the three answers', () => {
    const html = shown(viewOf({ entries: [openRunSeen] }));
    expect(html).toContain('aria-label="Tread plate: mark off"');
    expect(html).toContain('from Sill plug');
    for (const answer of ['Seen, sound', 'Seen, damaged, not the cause', 'Cause found']) {
      expect(html).toContain(answer);
    }
  });

  test('an airbag’s caution stands at its step in key words until read, and then in one quiet line', () => {
    const map = mapWith(['airbag']);
    const unread = shown(viewOf({ map, entries: [openRunSeen] }));
    expect(unread).toContain(cautionKeyWords.airbag);
    expect(unread).not.toContain('step-cautions-quiet');
    const read = shown(viewOf({ map, entries: [openRunSeen], cautionsRead: ['airbag'] }));
    expect(read).toContain('step-cautions-quiet');
    expect(read).toContain(cautionWords.airbag);
    expect(read).not.toContain(cautionKeyWords.airbag);
  });

  test('opened, the caution gives its whole text, and one button for all that were unread', () => {
    const view = viewOf({ cautionsRead: ['belt-tensioner'] });
    const opened = (on: readonly Caution[]): string =>
      shown(view, <StepCautions cautions={on} shown onShow={nothing} />);
    expect(opened(['glass', 'airbag', 'high-voltage'])).toContain(
      'Airbag, High voltage: read and understood',
    );
    expect(opened(['airbag'])).toContain(cautionSentences.airbag);
    expect(opened(['belt-tensioner', 'glass'])).not.toContain('read and understood');
    expect(opened(['belt-tensioner'])).toContain(cautionSentences['belt-tensioner']);
  });

  test('care that cannot hurt anyone is shown at its step and asks for nothing', () => {
    const html = shown(viewOf({ map: mapWith(['one-use-clips', 'glass']), entries: [openRunSeen] }));
    expect(html).toContain(cautionKeyWords['one-use-clips']);
    expect(html).toContain(cautionKeyWords.glass);
    expect(html).not.toContain('read and understood');
  });

  test('a restraint circuit is for looking only, and says so before the list', () => {
    const html = shown(viewOf({ map: mapWith([], 'restraint') }));
    expect(html).toContain('Look only.');
    expect(html.indexOf('Look only.')).toBeLessThan(html.indexOf('class="dig-list"'));
    expect(shown(viewOf({}))).not.toContain('Look only.');
  });

  test('without a circuit it says that too little is known, and offers the circuits', () => {
    const html = shown(viewOf({ circuitId: null }));
    expect(html).toContain('Too little known to rank');
    expect(html).toContain('>Seat switch<');
    expect(html).not.toContain('class="dig-list"');
  });

  test('a proved cause ends the list and says what comes next', () => {
    const found: JobEntry = {
      id: 'entry:found',
      at,
      type: 'inspection',
      stretches: [{ segmentId: 'segment:middle', fromMm: 240, toMm: 260 }],
      result: 'found',
      lookQuality: 0.95,
      note: '',
    };
    const html = shown(viewOf({ entries: [found] }));
    expect(html).toContain('What next');
    expect(html).toContain('Start another job on this map');
    expect(html).not.toContain('class="dig-list"');
  });
});

test('what is off the car is counted with the minutes to put it back', () => {
  const off = (id: JobEntry['id'], panelId: `panel:${string}`): JobEntry => ({
    id,
    at,
    type: 'panel-off',
    panelId,
  });
  const html = shown(
    viewOf({ entries: [off('entry:a', 'panel:tread'), off('entry:b', 'panel:seat')] }),
    <RefitCount />,
  );
  expect(html).toContain('2 off, to refit');
  expect(html).toContain(String(sample.tread.minutesOn + sample.seat.minutesOn));
  expect(shown(viewOf({}), <RefitCount />)).toContain('All panels on');
});

describe('words and figures', () => {
  test('every caution has its sentence, and those that fire or kill are read once', () => {
    for (const caution of cautions) expect(cautionSentences[caution].length).toBeGreaterThan(20);
    expect([...grave].sort()).toEqual(['airbag', 'belt-tensioner', 'high-voltage']);
  });

  test('no caution gives a waiting time or a way to measure airbag wiring', () => {
    for (const caution of ['airbag', 'belt-tensioner', 'high-voltage'] as const) {
      expect(cautionSentences[caution]).not.toMatch(/\d/);
    }
  });

  test('what was read of panels and of tests stands in the record by name, and is known from it', () => {
    const read: JobEntry = {
      id: 'entry:read',
      at,
      type: 'caution-read',
      cautions: ['airbag', 'belt-tensioner'],
      tests: ['live-wire'],
    };
    expect([...cautionsRead([openRunSeen, read]).panels]).toEqual(['airbag', 'belt-tensioner']);
    expect([...cautionsRead([read]).tests]).toEqual(['live-wire']);
    expect(entryLine(read, viewOf({}))).toBe('Read and understood: Airbag, Belt tensioner, live wire');
    expect(cautionsRead([openRunSeen]).panels.size).toBe(0);
  });

  test('a small chance is never said to be none, nor a large one to be certain', () => {
    expect(sayPercent(0)).toBe('0');
    expect(sayPercent(0.001)).toBe('<1');
    expect(sayPercent(0.124)).toBe('12');
    expect(sayPercent(0.998)).toBe('>99');
    expect(sayPercent(1)).toBe('100');
  });

  test('a clear view counts for more than half a view, and that for more than feeling', () => {
    expect(lookQualities.clear).toBeGreaterThan(lookQualities.half);
    expect(lookQualities.half).toBeGreaterThan(lookQualities.feel);
    for (const name of ['clear', 'half', 'feel'] as const) {
      expect(nearestLookQuality(lookQualities[name])).toBe(name);
    }
  });
});
