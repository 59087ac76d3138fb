import { describe, expect, test, vi } from 'vitest';
import type { Client } from '#electron/contract/client.ts';
import { draftsOver, withTyped } from '#renderer/session/drafts.ts';

/** A host that keeps texts by key, and answers a first read only when told to. */
function host(kept: Map<string, string>, gate: Promise<void> = Promise.resolve()) {
  return (async (name: string, input: { key: string; text?: string }) => {
    if (name === 'place.keep') {
      kept.set(input.key, input.text ?? '');
      return { ok: true, value: {} };
    }
    await gate;
    return { ok: true, value: { text: kept.get(input.key) ?? null } };
  }) as unknown as Client;
}
const drafts = (kept: Map<string, string>, gate?: Promise<void>) =>
  draftsOver('job:one', () => host(kept, gate));

describe('what is typed and not kept yet', () => {
  test('is there again after a power cut, form by form', async () => {
    const kept = new Map<string, string>();
    const before = drafts(kept);
    before.change('repair', { note: 'two joins, stag' });
    before.change('repair', { joints: 2 });
    before.change('end', { reason: 'no time' });
    await vi.waitFor(() => expect(kept.get('drafts.job:one')).toContain('no time'));
    const after = drafts(kept);
    await after.read();
    expect(after.store.getState().forms).toEqual({
      repair: { note: 'two joins, stag', joints: 2 },
      end: { reason: 'no time' },
    });
  });

  test('is gone once it is kept', async () => {
    const kept = new Map([['drafts.job:one', JSON.stringify({ repair: { note: 'a' } })]]);
    const after = drafts(kept);
    await after.read();
    after.drop('repair');
    await vi.waitFor(() => expect(kept.get('drafts.job:one')).toBe(''));
  });

  test('is never written over by an older text that is read late, nor writes over another form', async () => {
    const kept = new Map([
      ['drafts.job:one', JSON.stringify({ repair: { note: 'old' }, end: { reason: 'b' } })],
    ]);
    let open = (): void => {};
    const gate = new Promise<void>((resolve) => {
      open = resolve;
    });
    const slow = drafts(kept, gate);
    const read = slow.read();
    slow.change('repair', { note: 'new' });
    open();
    await read;
    const forms = { repair: { note: 'new' }, end: { reason: 'b' } };
    expect(slow.store.getState().forms).toEqual(forms);
    await vi.waitFor(() => expect(JSON.parse(kept.get('drafts.job:one') ?? '')).toEqual(forms));
  });

  test('that no longer fits its field gives way to what the form begins with', () => {
    const first = { note: '', joints: null as number | null, cures: ['tape'] };
    expect(withTyped(first, { note: 5, joints: 3, cures: 'tape', gone: true })).toEqual({
      note: '',
      joints: 3,
      cures: ['tape'],
    });
    expect(withTyped(first, undefined)).toBe(first);
  });
});
