import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Client } from '#electron/contract/client.ts';
import { type LengthSystem, lengthSystems } from '../language/say-length.ts';
import { type SideNaming, sideNamings } from '../language/say-side.ts';

/** What a person sets once for this machine; no document knows of it. */
export interface MachineSettings {
  readonly theme: 'system' | 'day' | 'night';
  readonly lengths: LengthSystem;
  readonly sides: SideNaming;
}

export const firstSettings: MachineSettings = { theme: 'system', lengths: 'metric', sides: 'left-right' };

const settingsKey = 'machine.settings';
const allowed: { readonly [K in keyof MachineSettings]: readonly MachineSettings[K][] } = {
  theme: ['system', 'day', 'night'],
  lengths: lengthSystems,
  sides: sideNamings,
};

/** Settings from kept text. What is not understood falls back to the first setting, line by line. */
export function readSettings(text: string | null): MachineSettings {
  let kept: unknown = null;
  try {
    kept = text === null ? null : JSON.parse(text);
  } catch {
    return firstSettings;
  }
  if (typeof kept !== 'object' || kept === null) return firstSettings;
  const read = <K extends keyof MachineSettings>(key: K): MachineSettings[K] => {
    const value = (kept as Partial<Record<K, unknown>>)[key];
    return allowed[key].find((each) => each === value) ?? firstSettings[key];
  };
  return { theme: read('theme'), lengths: read('lengths'), sides: read('sides') };
}

export const machineSettings = createStore<MachineSettings>(() => firstSettings);

/** Reads one part of the settings and follows it. */
export function useMachineSettings<T>(select: (settings: MachineSettings) => T): T {
  return useStore(machineSettings, select);
}

let keeper: Client | null = null;

/** Reads the kept settings and keeps every later change through this client. */
export async function followSettings(client: Client): Promise<void> {
  const kept = await client('place.read', { key: settingsKey });
  if (kept.ok) machineSettings.setState(readSettings(kept.value.text));
  keeper = client;
}

/** Changes a setting here and now, and keeps it. */
export function changeSettings(change: Partial<MachineSettings>): void {
  machineSettings.setState(change);
  void keeper?.('place.keep', { key: settingsKey, text: JSON.stringify(machineSettings.getState()) });
}
