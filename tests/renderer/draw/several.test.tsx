import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { MapDocument } from '#core/map/map-document.ts';
import { countWords } from '#renderer/language/draw-several.ts';
import { type Draw, DrawContext } from '#renderer/places/draw/draw-context.ts';
import { SeveralForm } from '#renderer/places/draw/several/several-form.tsx';
import { sharedValue, shareOf } from '#renderer/places/draw/several/shared-value.ts';
import { thingsByKind } from '#renderer/places/draw/several/things-by-kind.ts';
import { withWord } from '#renderer/places/draw/several/use-change-each.ts';
import { sample } from '#tests/sample.ts';

const shown = (part: ReactNode, map: MapDocument = sample.map): string =>
  renderToStaticMarkup(<DrawContext value={{ map } as Draw}>{part}</DrawContext>);

test('a value is shared only where all have it', () => {
  expect(sharedValue([3, 3, 3])).toBe(3);
  expect(sharedValue([3, 4])).toBeUndefined();
  expect(sharedValue<number | null>([null, null])).toBeNull();
  expect(shareOf([['glass'], ['glass', 'fuel']], 'glass')).toBe('all');
  expect(shareOf([['glass'], ['fuel']], 'glass')).toBe('some');
  expect(shareOf([['fuel'], []], 'glass')).toBe('none');
});

test('a word goes into a list in the order of all words, once, and out again', () => {
  const all = ['wet', 'hot', 'under-feet'];
  expect(withWord(all, ['under-feet'], 'wet', true)).toEqual(['wet', 'under-feet']);
  expect(withWord(all, ['wet', 'under-feet'], 'wet', true)).toEqual(['wet', 'under-feet']);
  expect(withWord(all, ['wet', 'under-feet'], 'wet', false)).toEqual(['under-feet']);
});

test('picked things are sorted by kind, fixings with their run; what is gone is left out', () => {
  const things = thingsByKind(sample.map, ['clip:b', 'panel:seat', 'panel:none', 'segment:rear', 'clip:a']);
  expect(things.panel.map((panel) => panel.id)).toEqual(['panel:seat']);
  expect(things.segment.map((run) => run.id)).toEqual(['segment:rear']);
  expect(things.clip.map((clip) => [clip.id, clip.segmentId])).toEqual([
    ['clip:a', 'segment:front'],
    ['clip:b', 'segment:front'],
  ]);
});

test('panels that differ in minutes and cautions say so and keep what they share', () => {
  const html = shown(<SeveralForm ids={['panel:tread', 'panel:seat']} />);
  expect(html).toContain(countWords.panel(2));
  expect(html).toMatch(/placeholder="differs"[^>]*value=""/);
  expect(html).toContain('Airbag<span class="quiet"> (differs)</span>');
  expect(html).toContain('>Glass</span>');
});

test('notes that differ are never written over', () => {
  const map = {
    ...sample.map,
    panels: new Map([...sample.map.panels].map(([id, panel]) => [id, { ...panel, note: id }])),
  };
  const html = shown(<SeveralForm ids={['panel:tread', 'panel:seat']} />, map);
  expect(html).toContain('Their notes differ.');
  expect(html).not.toContain('<textarea');
});

test('things of several kinds stand apart, each kind counted', () => {
  const html = shown(<SeveralForm ids={['panel:tread', 'node:west', 'node:far', 'rub-spot:edge']} />);
  expect(html).toContain('4 things are picked.');
  for (const part of ['2 plugs and parts', '1 panel', '1 rub spot']) expect(html).toContain(part);
});
