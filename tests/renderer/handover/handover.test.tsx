import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { mapText } from '#core/map/exchange.ts';
import { mostSidePx } from '#renderer/drawing-export/map-png.ts';
import { mapSvg, mapSvgSize } from '#renderer/drawing-export/map-svg.ts';
import { BringInSteps } from '#renderer/places/handover/bring-in-steps.tsx';
import { pictureSize } from '#renderer/places/handover/drawing-size.ts';
import { faultsIn } from '#renderer/places/handover/faults-in.ts';
import type { BringInStep } from '#renderer/places/handover/use-bring-in.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { sample } from '#tests/sample.ts';

const svg = mapSvgSize(sample.map);

test('the size said beforehand is the size the drawing has', () => {
  const head = mapSvg(sample.map, boardColours.day).split('\n')[0] ?? '';
  expect(head).toContain(`width="${svg.widthPx}" height="${svg.heightPx}"`);
});

test('at full size a millimetre is a pixel, and the chosen width is the width there is', () => {
  const full = pictureSize(svg, { scale: 1 / svg.pxPerMm });
  expect(full.held).toBe(false);
  // The sample is 1.5 m long; the rest is the margin.
  expect(full.widthPx).toBeGreaterThan(1_500);
  expect(full.widthPx).toBeLessThan(1_700);
  expect(pictureSize(svg, { widthPx: 1_234 }).widthPx).toBe(1_234);
});

test('a picture is never larger than one may be, and says that it was held back', () => {
  const huge = pictureSize(svg, { widthPx: 90_000 });
  expect(huge.held).toBe(true);
  expect(Math.max(huge.widthPx, huge.heightPx)).toBe(mostSidePx);
});

test('every fault of a refused document beyond the first is named by what it is on', () => {
  const text = mapText(sample.map)
    .replace('"offFirst":["panel:tread"]', '"offFirst":["panel:none"]')
    .replace('"stationMm":400', '"stationMm":900');
  const { problems, nameOf } = faultsIn(text);
  expect(problems).toHaveLength(1);
  expect(nameOf('panel:seat')).toBe('Front seat');
  expect(faultsIn('nonsense').problems).toEqual([]);
});

const documentSummary = {
  kind: 'map' as const,
  name: 'Tiny sample',
  segments: 3,
  panels: 2,
  circuits: 1,
  entries: 0,
  alreadyHere: true,
  differs: null,
  sameHere: false,
};

const shown = (step: BringInStep): string =>
  renderToStaticMarkup(
    <BringInSteps
      bringing={{ step, read: async () => {}, choose: async () => {}, keep: async () => {}, reset: () => {} }}
    />,
  );

test('before anything is stored a bundle says what it holds, what is here, and what is missing', () => {
  const html = shown({
    at: 'asking',
    content: {
      kind: 'bundle',
      base64: '',
      whenOther: 'both',
      summary: {
        documents: [
          { ...documentSummary, entry: 'a.json', sameHere: true },
          {
            ...documentSummary,
            kind: 'job',
            name: '',
            entries: 1,
            entry: 'b.json',
            sameHere: false,
            alreadyHere: false,
          },
        ],
        history: null,
        newPictures: 1,
        knownPictures: 2,
        missingPictures: [{ documentName: 'Tiny sample', name: 'Roof scan', sha256: 'ab' }],
        ignored: ['notes.txt'],
      },
    },
  });
  for (const part of [
    'Vehicle map “Tiny sample”',
    'will not be stored again',
    'Job without a name',
    '1 entry.',
    '1 picture will be stored; 2 are here already.',
    'Roof scan, for Tiny sample',
    'notes.txt',
    'Nothing is stored yet.',
    'Keep it',
  ]) {
    expect(html).toContain(part);
  }
});

test('a bundle that is here in every part has nothing to keep', () => {
  const html = shown({
    at: 'asking',
    content: {
      kind: 'bundle',
      base64: '',
      whenOther: 'both',
      summary: {
        documents: [{ ...documentSummary, entry: 'a.json', sameHere: true }],
        history: null,
        newPictures: 0,
        knownPictures: 1,
        missingPictures: [],
        ignored: [],
      },
    },
  });
  expect(html).toContain('All of it is here already.');
  expect(html).not.toContain('Keep it');
});

test('a map that is here in another state says what differs, and what each answer does to it', () => {
  const differs = {
    added: 1,
    moved: 0,
    changed: 1,
    removed: 0,
    things: [
      { how: 'added' as const, kind: 'rub-spot', name: 'Bracket edge', fields: [] },
      { how: 'changed' as const, kind: 'panel', name: 'Tread plate', fields: ['name'] },
    ],
    oursEdited: true,
  };
  const asked = (whenOther: 'ours' | 'theirs' | 'both'): string =>
    shown({
      at: 'asking',
      content: { kind: 'document', text: '', whenOther, summary: { ...documentSummary, differs } },
    });
  const html = asked('theirs');
  for (const part of [
    '1 added, 0 moved, 1 changed, 0 removed',
    'Added: Rub spot “Bracket edge”',
    'Changed: Panel “Tread plate” (name)',
    'as one edit that can be undone',
    'Keep it',
  ]) {
    expect(html).toContain(part);
  }
  expect(asked('both')).toContain('beside yours');
  expect(asked('ours')).toContain('With ours kept, nothing of it would be stored.');
  expect(asked('ours')).not.toContain('Keep it');
});

test('a refusal names the file, the place and the reason, and offers another file', () => {
  const html = shown({
    at: 'refused',
    file: 'van.json',
    problem: { code: 'bad-field', path: 'segments[3].covering', expected: 'bare | pvc-tape' },
    more: null,
  });
  expect(html).toContain('van.json is not brought in; nothing was stored.');
  expect(html).toContain('Field segments[3].covering: expected bare | pvc-tape.');
  expect(html).toContain('Choose another file');
});

test('a wrong file is said in plain words: nothing of a parser or of a command line', () => {
  const problems = [
    { code: 'not-json', detail: 'Unexpected token \ufffd in JSON at position 0' },
    { code: 'wrong-format', expected: 'undertrim.map, undertrim.job', found: '' },
    { code: 'newer-version', found: 9, known: 1 },
  ] as const;
  for (const problem of problems) {
    for (const file of ['pic.png', 'car.map.json']) {
      const page = shown({ at: 'refused', file, problem, more: null });
      expect(page).toContain(file);
      expect(page).not.toMatch(/JSON document|token|Field|comes (first|second)|undertrim\./);
    }
  }
  const said = shown({ at: 'refused', file: 'pic.png', problem: problems[0], more: null });
  expect(said).toContain('neither a map nor a job nor a bundle');
});
