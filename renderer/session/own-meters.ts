import { useEffect } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { defaultMeters, handMeter } from '#core/circuit/default-meter-table.ts';
import { type MeterRecord, meterSchema } from '#core/job/meter-record.ts';
import type { Client } from '#electron/contract/client.ts';
import { hostClient } from './host.ts';

/** The meters of this workshop, kept per machine, and the one last used. */
export interface OwnMeters {
  readonly meters: readonly MeterRecord[];
  /** Name of the meter last chosen; a hand meter's when none was. */
  readonly usual: string;
}

const metersKey = 'machine.meters';
export const noOwnMeters: OwnMeters = { meters: [], usual: handMeter.name };

/** Kept meters from kept text. One that is not understood is left out; the others stay. */
export function readOwnMeters(text: string | null): OwnMeters {
  let kept: unknown = null;
  try {
    kept = text === null ? null : JSON.parse(text);
  } catch {
    return noOwnMeters;
  }
  if (typeof kept !== 'object' || kept === null) return noOwnMeters;
  const list = 'meters' in kept && Array.isArray(kept.meters) ? kept.meters : [];
  const meters = list.flatMap((each: unknown) => {
    const read = meterSchema.safeParse(each);
    return read.success ? [read.data] : [];
  });
  const usual = 'usual' in kept && typeof kept.usual === 'string' ? kept.usual : noOwnMeters.usual;
  return {
    meters,
    usual: [...defaultMeters, ...meters].some(({ name }) => name === usual) ? usual : noOwnMeters.usual,
  };
}

/** What a reading carries for a meter's name: null for the ordinary hand meter, which needs no words. */
export function meterNamed(name: string, { meters }: OwnMeters): MeterRecord | null {
  if (name === handMeter.name) return null;
  return (
    meters.find((meter) => meter.name === name) ?? defaultMeters.find((meter) => meter.name === name) ?? null
  );
}

/** The list with a meter added or put in the place of the one of its name, and used from now on. */
export function withMeter(own: OwnMeters, meter: MeterRecord, instead: string | null): OwnMeters {
  const others = own.meters.filter(({ name }) => name !== meter.name && name !== instead);
  return { meters: [...others, meter].sort((a, b) => a.name.localeCompare(b.name)), usual: meter.name };
}

export const ownMeters = createStore<OwnMeters>(() => noOwnMeters);
let following = false;

/** Reads the kept meters once. */
export async function followOwnMeters(client: Client): Promise<void> {
  if (following) return;
  following = true;
  const before = ownMeters.getState();
  const kept = await client('place.read', { key: metersKey });
  // What was changed while the disk was read is newer than what it held.
  if (kept.ok && ownMeters.getState() === before) ownMeters.setState(readOwnMeters(kept.value.text), true);
  following = kept.ok;
}

/** Changes the meters here and now, and keeps them. */
export function changeOwnMeters(next: OwnMeters): void {
  ownMeters.setState(next, true);
  void hostClient()('place.keep', { key: metersKey, text: JSON.stringify(next) });
}

/** The meters as they are, followed. */
export function useOwnMeters(): OwnMeters {
  useEffect(() => {
    void followOwnMeters(hostClient());
  }, []);
  return useStore(ownMeters);
}
