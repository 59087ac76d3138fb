import type { EntryOf, Job, JobEntry } from '#core/job/job-document.ts';
import { sample } from '#tests/sample.ts';

type Bare<T extends JobEntry['type']> = Omit<EntryOf<T>, 'id' | 'at' | 'type'>;

/** A record built entry by entry, ten minutes apart from nine o'clock; `at` sets another minute of the day. */
export class ClosingRecord {
  readonly entries: JobEntry[] = [];
  add<T extends JobEntry['type']>(type: T, rest: Bare<T>, minute?: number): EntryOf<T> {
    const n = this.entries.length + 1;
    const at = minute ?? 9 * 60 + 10 * n;
    const clock = `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`;
    const entry = { id: `entry:${n}`, at: `2026-01-05T${clock}:00Z`, type, ...rest } as unknown as EntryOf<T>;
    this.entries.push(entry);
    return entry;
  }
  get job(): Job {
    return { ...sample.job, entries: this.entries };
  }
}

export const place = [{ segmentId: 'segment:middle', fromMm: 240, toMm: 260 }] as const;

export const bare = {
  apartNodeIds: ['node:west', 'node:far'] as const,
  switchClosed: null,
  ignitionOn: false,
  batteryConnected: false,
};

/** Ohms from the module's unplugged end to the body. */
export const toBody = (ohms: number | 'open-line') =>
  ({ test: 'ohms', from: { on: 'wire', nodeId: 'node:west' }, to: { on: 'body' }, ohms }) as const;

export const causeFinding: Bare<'finding'> = {
  stretches: [...place],
  damage: 'chafed',
  circuitId: 'circuit:seat-switch',
  cause: 'edge-touches',
  result: 'proved-cause',
  photos: [],
  note: '',
};

/** A whole job: a reading, an opening, the cause proved and repaired, every test good, everything refitted. */
export function wholeJob(): ClosingRecord {
  const record = new ClosingRecord();
  const reading = record.add('reading', {
    reading: toBody(0.4),
    state: { ...bare, apartNodeIds: [...bare.apartNodeIds] },
    note: '',
  });
  record.add('panel-off', { panelId: 'panel:tread' });
  record.add('panel-off', { panelId: 'panel:seat' });
  record.add('inspection', { stretches: [...place], result: 'found', lookQuality: 0.95, note: '' });
  const finding = record.add('finding', causeFinding);
  record.add('proof-of-cause', {
    findingId: finding.id,
    damageSeen: true,
    onFaultyCircuit: true,
    comesAndGoes: true,
    note: '',
  });
  record.add('repair', {
    findingId: finding.id,
    practices: ['crimp-and-sealed-sleeve'],
    joints: 1,
    cures: ['edge-trim'],
    makerAllows: 'yes',
    photos: [],
    note: '',
  });
  record.add('looked-along', {
    findingId: finding.id,
    eachWayMm: 300,
    beside: 'sound',
    twin: 'none-there',
    note: '',
  });
  record.add('proof', {
    check: 'reading',
    repeats: reading.id,
    reading: toBody('open-line'),
    state: reading.state,
    good: true,
    note: '',
  });
  record.add('proof', { check: 'code', good: true, note: '' });
  record.add('proof', { check: 'function', good: true, note: '' });
  record.add('proof', { check: 'move', good: true, note: '' });
  record.add('proof', { check: 'airbag-lamp', good: true, note: '' });
  record.add('panel-on', { panelId: 'panel:seat' });
  record.add('panel-on', { panelId: 'panel:tread' });
  return record;
}
