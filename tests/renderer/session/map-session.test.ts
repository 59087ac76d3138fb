import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import { addPanel } from '#core/map/commands/add-panel.ts';
import { changePanel } from '#core/map/commands/change-panel.ts';
import { moveNode } from '#core/map/commands/move-node.ts';
import { removeThings } from '#core/map/commands/remove-things.ts';
import { mapFromExchange, mapToExchange } from '#core/map/exchange.ts';
import { applyPatch, type Patch, squashPatches } from '#core/map/patch.ts';
import type { Transaction } from '#core/map/transaction.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Client } from '#electron/contract/client.ts';
import { type MapOpen, type MapSession, mapSession, type Timers } from '#renderer/session/map-session.ts';
import { sample } from '#tests/sample.ts';

/** A host that keeps one map as the real one does, and can be made to refuse. */
class Host {
  map = sample.map;
  readonly kept: Transaction[] = [];
  refuse: Problem | null = null;

  readonly client: Client = (async (name: string, input: unknown) => {
    if (name === 'map.open') {
      return ok({ map: mapToExchange(this.map), history: { done: [], undone: [] } });
    }
    if (name !== 'map.commit') throw new Error(`no such request here: ${name}`);
    if (this.refuse) return fail(this.refuse);
    const { expectedRevision, transaction, joins } = input as {
      expectedRevision: number;
      transaction: Transaction;
      joins?: boolean;
    };
    if (expectedRevision !== this.map.revision) {
      return fail({ code: 'stale-revision', expected: expectedRevision, found: this.map.revision });
    }
    const next = applyPatch(this.map, transaction.patch);
    if (!next.ok) return next;
    const before = joins ? this.kept.pop() : undefined;
    this.kept.push(
      before ? { ...transaction, patch: squashPatches(before.patch, transaction.patch) } : transaction,
    );
    this.map = { ...next.value, revision: this.map.revision + 1 };
    return ok({ revision: this.map.revision });
  }) as Client;
}

/** Time that passes only when told to. */
class Clock implements Timers {
  ms = 0;
  private tasks: { at: number; task: () => void }[] = [];

  readonly nowMs = (): number => this.ms;

  readonly later = (task: () => void, ms: number): (() => void) => {
    const entry = { at: this.ms + ms, task };
    this.tasks.push(entry);
    return () => {
      this.tasks = this.tasks.filter((each) => each !== entry);
    };
  };

  pass(ms: number): void {
    this.ms += ms;
    const due = this.tasks.filter((each) => each.at <= this.ms);
    this.tasks = this.tasks.filter((each) => each.at > this.ms);
    for (const { task } of due) task();
  }
}

let host: Host;
let clock: Clock;
let session: MapSession;

const open = (): MapOpen => {
  const state = session.store.getState();
  if (state.phase !== 'open') throw new Error(`the map is ${state.phase}`);
  return state;
};
const rename = (name: string): void => {
  const { document } = open();
  session.edit(changePanel(document, { panelId: 'panel:seat', changes: { name } }), {
    label: 'edit.changePanel',
    joinKey: 'panel:seat.name',
  });
};
const shift = (xMm: number): void => {
  const patch = moveNode(open().document, { nodeId: 'node:far', at: { xMm, yMm: 0, zMm: 0 } });
  session.edit(patch, { label: 'edit.moveThings' });
};

beforeEach(async () => {
  host = new Host();
  clock = new Clock();
  session = mapSession('map:tiny', host.client, clock);
  await session.open();
});

test('an edit is on screen at once and on disk after it', async () => {
  shift(1700);
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1700);
  expect(open().saving).toBe('saving');
  await session.flush();
  expect(open().saving).toBe('saved');
  expect(host.map.nodes.get('node:far')?.at.xMm).toBe(1700);
});

test('undo back to the start and redo to the end give the same maps, whatever was edited', async () => {
  const edits = fc.array(
    fc.oneof(
      fc.record({ kind: fc.constant('move' as const), xMm: fc.integer({ min: 1100, max: 3000 }) }),
      fc.record({ kind: fc.constant('name' as const), name: fc.string({ maxLength: 12 }) }),
      fc.record({ kind: fc.constant('panel' as const), at: fc.integer({ min: 0, max: 900 }) }),
      fc.record({ kind: fc.constant('remove' as const) }),
    ),
    { minLength: 1, maxLength: 12 },
  );
  await fc.assert(
    fc.asyncProperty(edits, async (list) => {
      host = new Host();
      clock = new Clock();
      session = mapSession('map:tiny', host.client, clock);
      await session.open();
      const normal = (): unknown => ({ ...mapToExchange(open().document), revision: 0 });
      const start = normal();
      for (const [index, edit] of list.entries()) {
        const { document } = open();
        if (edit.kind === 'move' && document.nodes.has('node:far')) shift(edit.xMm);
        if (edit.kind === 'name') rename(edit.name);
        if (edit.kind === 'panel') {
          const panel = { ...sample.tread, id: `panel:p${index}` as const, order: edit.at };
          session.edit(addPanel(document, { panel }), { label: 'edit.addPanel' });
        }
        if (edit.kind === 'remove' && document.nodes.has('node:far')) {
          session.edit(removeThings(document, { ids: ['node:far'] }), { label: 'edit.remove' });
        }
        clock.pass(200);
      }
      const end = normal();
      const steps = open().history.done.length;
      for (let i = 0; i < steps; i++) session.undo();
      expect(normal()).toEqual(start);
      for (let i = 0; i < steps; i++) session.redo();
      expect(normal()).toEqual(end);
      await session.flush();
      expect({ ...mapToExchange(host.map), revision: 0 }).toEqual(end);
    }),
    { seed: 20260107, numRuns: 60 },
  );
});

test('typing in one field within half a second is one entry, and one undo takes it back', async () => {
  for (const name of ['S', 'Se', 'Sea']) {
    rename(name);
    clock.pass(200);
  }
  expect(open().history.done).toHaveLength(1);
  session.undo();
  expect(open().document.panels.get('panel:seat')?.name).toBe('Front seat');
  await session.flush();
  expect(host.kept.map((each) => each.origin)).toEqual(['user', 'undo']);
});

test('what is typed without a pause is still on disk within a second', async () => {
  for (let ms = 0; ms < 1_000; ms += 100) {
    rename(`name ${ms}`);
    clock.pass(100);
  }
  await Promise.resolve();
  await Promise.resolve();
  expect(host.kept.length).toBeGreaterThan(0);
});

test('a long burst in one field is one entry here and on disk, and one undo takes all of it back', async () => {
  for (let ms = 0; ms < 3_000; ms += 100) {
    rename(`Front seat ${ms}`);
    clock.pass(100);
    await Promise.resolve();
    await Promise.resolve();
  }
  expect(open().history.done).toHaveLength(1);
  await session.flush();
  expect(host.kept).toHaveLength(1);
  expect(host.kept[0]?.patch).toEqual(open().history.done[0]?.patch);
  expect(host.map.panels.get('panel:seat')?.name).toBe('Front seat 2900');
  session.undo();
  await session.flush();
  expect(host.map.panels.get('panel:seat')?.name).toBe('Front seat');
  session.redo();
  expect(open().document.panels.get('panel:seat')?.name).toBe('Front seat 2900');
});

test('a pause of half a second, or another field, begins a new entry', () => {
  rename('Seat');
  clock.pass(600);
  rename('Seat, left');
  expect(open().history.done).toHaveLength(2);
  session.edit(changePanel(open().document, { panelId: 'panel:seat', changes: { minutesOff: 9 } }), {
    label: 'edit.changePanel',
    joinKey: 'panel:seat.minutesOff',
  });
  expect(open().history.done).toHaveLength(3);
});

test('a gesture under way is shown and never stored', async () => {
  const patch = moveNode(sample.map, { nodeId: 'node:far', at: { xMm: 9000, yMm: 0, zMm: 0 } });
  session.preview(patch.ok ? patch.value : null);
  expect(open().shown.nodes.get('node:far')?.at.xMm).toBe(9000);
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1500);
  session.preview(null);
  expect(open().shown).toBe(open().document);
  await session.flush();
  expect(host.kept).toEqual([]);
});

test('picking something never takes the chance to redo away', () => {
  shift(1700);
  session.undo();
  session.select(['node:west']);
  expect(open().history.undone).toHaveLength(1);
  session.redo();
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1700);
});

test('undo brings back what was picked before the edit', () => {
  session.select(['node:far']);
  session.edit(removeThings(open().document, { ids: ['node:far'] }), { label: 'edit.remove', select: [] });
  expect(open().selection).toEqual([]);
  session.undo();
  expect(open().selection).toEqual(['node:far']);
});

/** What another window puts on disk, behind this session's back. */
const elsewhere = (patch: Result<Patch>): void => {
  const next = patch.ok ? applyPatch(host.map, patch.value) : patch;
  if (!next.ok) throw new Error(next.problem.code);
  host.map = { ...next.value, revision: host.map.revision + 1 };
};
const moveFar = (xMm: number): Result<Patch> =>
  moveNode(host.map, { nodeId: 'node:far', at: { xMm, yMm: 0, zMm: 0 } });

test('what was drawn in two windows at once is all kept where it is not the same thing', async () => {
  elsewhere(changePanel(host.map, { panelId: 'panel:seat', changes: { name: 'Rear bench' } }));
  shift(1700);
  rename('Seat, left');
  shift(1750);
  await session.flush();
  // The name was typed over another one meanwhile, and what came after it built on that.
  expect(open().reloaded).toBe(true);
  expect(host.map.panels.get('panel:seat')?.name).toBe('Rear bench');
  expect(host.map.nodes.get('node:far')?.at.xMm).toBe(1700);
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1700);
  expect(open().saving).toBe('saved');
  expect(mapToExchange(open().document)).toEqual(mapToExchange(host.map));
  shift(1800);
  await session.flush();
  expect(host.map.nodes.get('node:far')?.at.xMm).toBe(1800);
  expect(open().reloaded).toBe(false);
});

test('an edit that touches nothing the other window touched is kept without a word, and can be undone', async () => {
  elsewhere(changePanel(host.map, { panelId: 'panel:seat', changes: { name: 'Rear bench' } }));
  session.select(['node:far']);
  shift(1700);
  await session.flush();
  expect(open().reloaded).toBe(false);
  expect(open().selection).toEqual(['node:far']);
  expect(host.map.panels.get('panel:seat')?.name).toBe('Rear bench');
  session.undo();
  await session.flush();
  expect(host.map.nodes.get('node:far')?.at.xMm).toBe(1500);
  expect(host.map.panels.get('panel:seat')?.name).toBe('Rear bench');
});

test('a window where nothing is being drawn follows the other one', async () => {
  session.select(['node:far', 'panel:seat']);
  elsewhere(moveFar(1650));
  await session.follow();
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1650);
  elsewhere(removeThings(host.map, { ids: ['panel:seat'] }));
  await session.follow();
  expect(open().selection).toEqual(['node:far']);
  elsewhere(moveFar(1660));
  shift(1900);
  await session.follow();
  await session.flush();
  expect(open().reloaded).toBe(true);
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1660);
});

test('a step back made while another window drew is not done to what stands there now', async () => {
  shift(1700);
  await session.flush();
  elsewhere(moveFar(1650));
  session.undo();
  await session.flush();
  expect(open().reloaded).toBe(true);
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1650);
});

test('a busy disk keeps the edit and tries again until it is stored', async () => {
  host.refuse = { code: 'store-busy' };
  shift(1700);
  await session.flush();
  expect(open().saving).toBe('failed');
  expect(open().saveProblem?.code).toBe('store-busy');
  expect(open().document.nodes.get('node:far')?.at.xMm).toBe(1700);
  host.refuse = null;
  clock.pass(2_000);
  await session.flush();
  expect(open().saving).toBe('saved');
  expect(host.map.nodes.get('node:far')?.at.xMm).toBe(1700);
});

test('a refused edit changes nothing and says why', () => {
  const before = open().document;
  const problem = session.edit(
    changePanel(before, { panelId: 'panel:tread', changes: { offFirst: ['panel:seat'] } }),
    { label: 'edit.changePanel' },
  );
  expect(problem?.code).toBe('panel-cycle');
  expect(open().document).toBe(before);
  expect(open().history.done).toEqual([]);
});

test('the map on disk can be read back as the same map', async () => {
  shift(1650);
  rename('Seat');
  await session.flush();
  expect(mapFromExchange(mapToExchange(host.map)).panels.get('panel:seat')?.name).toBe('Seat');
});
