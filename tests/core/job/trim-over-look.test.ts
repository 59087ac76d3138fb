import { describe, expect, test } from 'vitest';
import type { JobEntry } from '#core/job/job-document.ts';
import { trimOverLook } from '#core/job/trim-over-look.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { sample } from '#tests/sample.ts';

const at = { id: 'entry:a', at: '2026-01-05T09:00:00Z' } as const;
const off = (panelId: PanelId): JobEntry => ({ ...at, type: 'panel-off', panelId });
const over = (fromMm: number, toMm: number, ...standing: JobEntry[]) =>
  trimOverLook(sample.map, sample.line, [{ fromMm, toMm }], standing);

describe('trim that a clear look means is off', () => {
  test('what hides the stretch, and what comes off before it, in that order', () => {
    expect(over(620, 980)).toEqual(['panel:tread', 'panel:seat']);
  });

  test('is not what is off already', () => {
    expect(over(620, 980, off('panel:tread'))).toEqual(['panel:seat']);
    expect(over(620, 980, off('panel:tread'), off('panel:seat'))).toEqual([]);
  });

  test('is none where the stretch is in view', () => {
    expect(over(1000, 1400)).toEqual([]);
  });

  test('is not a panel over less than half of what was looked at', () => {
    expect(over(950, 1300)).toEqual([]);
    expect(over(300, 700)).toEqual(['panel:tread']);
  });

  test('is neither of two that serve alike once one of them is off', () => {
    const either: JobEntry = {
      ...at,
      type: 'either-panel',
      panelIds: ['panel:seat', 'panel:tread'],
      either: true,
    };
    expect(over(620, 980, either, off('panel:tread'))).toEqual([]);
  });
});
