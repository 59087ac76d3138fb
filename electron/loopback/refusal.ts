import type { IncomingMessage } from 'node:http';
import { tokenHeader } from '../contract/token-header.ts';
import { sameToken } from './token.ts';

/** Why a message is turned away: an HTTP status and a word for the log and the tests. */
export interface Refusal {
  readonly status: number;
  readonly reason: string;
}

/**
 * Whether a message is not addressed to this very server by name. A page of another site that has its own
 * name pointed at this machine (DNS rebinding) still sends its own name.
 */
export function refusedHost(message: IncomingMessage, port: number): Refusal | null {
  const host = message.headers.host;
  return host === `127.0.0.1:${port}` || host === `localhost:${port}`
    ? null
    : { status: 421, reason: 'wrong-host' };
}

/** Whether a request does not come from our own page: its origin, kind of body and token are all asked. */
export function refusedRequest(message: IncomingMessage, token: string): Refusal | null {
  const { origin, host } = message.headers;
  if (message.method !== 'POST') return { status: 405, reason: 'wrong-method' };
  if (origin !== `http://${host}`) return { status: 403, reason: 'wrong-origin' };
  const site = message.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin') return { status: 403, reason: 'cross-site' };
  const offered = message.headers[tokenHeader];
  if (typeof offered !== 'string' || !sameToken(offered, token))
    return { status: 401, reason: 'wrong-token' };
  if (message.headers['content-type'] !== 'application/json') return { status: 415, reason: 'wrong-type' };
  return null;
}
