import { assert } from '#core/quantity/assert.ts';
import { type Channel, type Client, clientOver, type WireReply } from '#electron/contract/client.ts';
import type { RequestName } from '#electron/contract/contract.ts';
import { tokenHeader } from '#electron/contract/token-header.ts';
import { tellingOthers } from './other-windows.ts';

declare global {
  interface Window {
    /** Put there by the desktop's preload; missing where the page came from the loopback host. */
    readonly undertrim?: { request(name: RequestName, input: unknown): Promise<WireReply> };
  }
}

const tokenKey = 'undertrim.launch';

/** Every request of the contract, carried by whichever host opened this page. */
export function hostClient(): Client {
  client ??= tellingOthers(
    clientOver(window.undertrim ? desktopChannel(window.undertrim) : loopbackChannel(launchToken())),
  );
  return client;
}

let client: Client | null = null;

const desktopChannel =
  (desktop: NonNullable<Window['undertrim']>): Channel =>
  (name, input) =>
    desktop.request(name, input);

/** A refusal rejects, which the client gives as `no-answer`: the launch this page belongs to is over. */
const loopbackChannel =
  (token: string): Channel =>
  async (name, input) => {
    const reply = await fetch(`/request/${name}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', [tokenHeader]: token },
      body: JSON.stringify(input),
    });
    const body: unknown = await reply.json();
    assert(typeof body === 'object' && body !== null, 'the host answers with an object');
    if (!reply.ok) throw new Error('refused' in body ? String(body.refused) : String(reply.status));
    return body as WireReply;
  };

/**
 * The token of this launch: after the `#` when the window was opened, in this tab's own memory from then
 * on, so that it stays out of the address bar and the history and a reload still works.
 */
function launchToken(): string {
  const given = location.hash.slice(1);
  if (given !== '' && !given.startsWith('/')) {
    sessionStorage.setItem(tokenKey, given);
    history.replaceState(null, '', location.pathname + location.search);
  }
  return sessionStorage.getItem(tokenKey) ?? '';
}
