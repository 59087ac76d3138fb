import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type Client, clientOver, type WireReply } from '#electron/contract/client.ts';
import { tokenHeader } from '#electron/contract/token-header.ts';
import {
  type LoopbackHost,
  type LoopbackOptions,
  openLoopbackHost,
} from '#electron/loopback/loopback-host.ts';
import { openWorkshop } from '#electron/open-workshop.ts';
import { freshFolder } from './fresh-folder.ts';

/** A loopback host on a data folder of its own, with a client that speaks to it over HTTP. */
export interface Launch {
  readonly host: LoopbackHost;
  readonly client: Client;
  readonly folder: string;
  readonly address: string;
  /** Headers our own page would send. */
  readonly ownHeaders: Readonly<Record<string, string>>;
}

/** Launches the loopback host as `npm start` does, with a one-line page in place of the built one. */
export async function launchLoopback(changes: Partial<LoopbackOptions> = {}): Promise<Launch> {
  const folder = freshFolder();
  const builtFolder = join(folder, 'page');
  mkdirSync(builtFolder);
  writeFileSync(join(builtFolder, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(folder, 'outside.html'), 'outside');
  const workshop = openWorkshop(join(folder, 'data'), join(folder, 'no-samples'));
  if (!workshop.ok) throw new Error(workshop.problem.code);
  const host = await openLoopbackHost({ answer: workshop.value.answer, builtFolder, ...changes });
  onTestFinished(async () => {
    await host.close();
    workshop.value.close();
  });
  const address = `http://127.0.0.1:${host.port}`;
  const ownHeaders = { 'content-type': 'application/json', origin: address, [tokenHeader]: host.token };
  const client = clientOver(async (name, input) => {
    const body = JSON.stringify(input);
    const reply = await fetch(`${address}/request/${name}`, { method: 'POST', headers: ownHeaders, body });
    return (await reply.json()) as WireReply;
  });
  return { host, client, folder, address, ownHeaders };
}
