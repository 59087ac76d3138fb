import { describe, expect, test } from 'vitest';
import type { Client } from '#electron/contract/client.ts';
import {
  changeSettings,
  firstSettings,
  followSettings,
  machineSettings,
  readSettings,
} from '#renderer/session/machine-settings.ts';

describe('settings of this machine', () => {
  test('what was kept comes back', () => {
    const kept = { theme: 'night', lengths: 'imperial', sides: 'near-off' } as const;
    expect(readSettings(JSON.stringify(kept))).toEqual(kept);
  });

  test('nothing kept, nonsense and unknown values fall back to the first settings', () => {
    for (const text of [null, '', 'nonsense', '[]', '"night"', 'null']) {
      expect(readSettings(text)).toEqual(firstSettings);
    }
    expect(readSettings('{"theme":"purple","lengths":"imperial"}')).toEqual({
      ...firstSettings,
      lengths: 'imperial',
    });
  });

  test('a change holds at once and is kept for the next start', async () => {
    let text: string | null = '{"theme":"night"}';
    const client = (async (name: string, input: { text?: string }) => {
      if (name === 'place.keep') text = input.text ?? null;
      return { ok: true, value: name === 'place.read' ? { text } : {} };
    }) as unknown as Client;
    await followSettings(client);
    expect(machineSettings.getState().theme).toBe('night');
    changeSettings({ theme: 'day' });
    expect(machineSettings.getState().theme).toBe('day');
    expect(readSettings(text).theme).toBe('day');
  });
});
