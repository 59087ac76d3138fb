import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { type Client, clientOver, type WireReply } from '#electron/contract/client.ts';
import { tokenHeader } from '#electron/contract/token-header.ts';
import { freshFolder } from './fresh-folder.ts';

interface Running {
  readonly child: ChildProcess;
  /** The first line it printed, on either stream. */
  readonly said: string;
  readonly ended: Promise<number | null>;
}

/** Starts the loopback host in a process of its own and waits until it says something. */
async function start(data: string, ...words: string[]): Promise<Running> {
  const program = join(import.meta.dirname, 'serve-until-stopped.ts');
  const child = spawn(process.execPath, [program, '--data', data, '--no-window', ...words]);
  onTestFinished(() => void child.kill('SIGKILL'));
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const said = await new Promise<string>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (part: Buffer) => resolve(part.toString().trim()));
    }
    child.once('exit', () => reject(new Error('it said nothing')));
  });
  return { child, said, ended };
}

/** A client for the address a start printed, as the page makes of it. */
function clientFor(said: string): Client {
  const address = new URL(/http:\S+/.exec(said)?.[0] ?? '');
  const headers = {
    'content-type': 'application/json',
    origin: address.origin,
    [tokenHeader]: address.hash.slice(1),
  };
  return clientOver(async (name, input) => {
    const body = JSON.stringify(input);
    const reply = await fetch(`${address.origin}/request/${name}`, { method: 'POST', headers, body });
    return (await reply.json()) as WireReply;
  });
}

test('a start prints its address, answers there, and stops cleanly when told', async () => {
  const data = freshFolder();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    const { child, said, ended } = await start(data);
    expect(said).toMatch(/^Open http:\/\/127\.0\.0\.1:\d+\/#[\w-]{43}$/);
    const kept = await clientFor(said)('place.keep', { key: 'draw', text: signal });
    expect(kept).toEqual({ ok: true, value: {} });
    child.kill(signal);
    expect(await ended).toBe(0);
  }
});

test('a second start on the same data is refused in words, and the first goes on', async () => {
  const data = freshFolder();
  const first = await start(data);
  const second = await start(data);
  expect(second.said).toContain('already open');
  expect(second.said).toContain(data);
  expect(await second.ended).toBe(1);
  expect(await clientFor(first.said)('place.read', { key: 'draw' })).toMatchObject({ ok: true });
});

test('after being killed it starts again on the same data with everything kept', async () => {
  const data = freshFolder();
  const first = await start(data);
  const made = { name: 'Van', bodyStyle: 'van', driveSide: 'right' } as const;
  const created = await clientFor(first.said)('map.create', made);
  first.child.kill('SIGKILL');
  await first.ended;
  const second = await start(data);
  const list = await clientFor(second.said)('library.list', {});
  if (!created.ok || !list.ok) throw new Error('the host did not answer');
  expect(list.value.maps.map(({ id }) => id)).toContain(created.value.mapId);
});

test('a port in use is told, and the data folder is free again', async () => {
  const data = freshFolder();
  const other = await start(freshFolder());
  const port = new URL(/http:\S+/.exec(other.said)?.[0] ?? '').port;
  const refused = await start(data, '--port', port);
  expect(refused.said).toContain(`Port ${port} is in use`);
  expect(await refused.ended).toBe(1);
  expect((await start(data)).said).toMatch(/^Open /);
});
