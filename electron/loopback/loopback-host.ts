import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { parseJson } from '#core/map/parse-json.ts';
import type { WireReply } from '../contract/client.ts';
import { readPageFile } from '../page-file.ts';
import { pageHeaders } from '../page-headers.ts';
import { readBody } from './read-body.ts';
import { type Refusal, refusedHost, refusedRequest } from './refusal.ts';
import { newToken } from './token.ts';

/** A running loopback host. */
export interface LoopbackHost {
  readonly port: number;
  readonly token: string;
  /** The address that opens the page; the token after the `#` never leaves the browser by itself. */
  readonly launchAddress: string;
  close(): Promise<void>;
}

export interface LoopbackOptions {
  /** Answers one request of the contract; never throws. */
  readonly answer: (name: string, input: unknown) => WireReply;
  readonly builtFolder: string;
  /** 0 or none: whichever is free. */
  readonly port?: number;
  /** How long a message may take to arrive whole. */
  readonly patienceMs?: number;
  readonly mostBodyBytes?: number;
}

/** The largest message: a file of 64 million characters with its escapes. */
const mostBodyBytes = 100_000_000;
const patienceMs = 30_000;
/** How long a sender that was refused may go on before the connection is cut. */
const lingerMs = 1_000;
const requestPath = /^\/request\/([a-zA-Z.]{1,60})$/;

/**
 * Serves the page and the contract on 127.0.0.1 alone, to whoever holds the token of this launch. Rejects
 * when the port is taken.
 */
export async function openLoopbackHost(options: LoopbackOptions): Promise<LoopbackHost> {
  const token = newToken();
  const patience = options.patienceMs ?? patienceMs;
  const server = createServer({
    headersTimeout: Math.min(patience, 10_000),
    requestTimeout: patience,
    connectionsCheckingInterval: Math.min(patience, 5_000),
    maxHeaderSize: 16_384,
  });
  server.on('request', (message, reply) => {
    void serve(message, reply, options, token, portOf(server)).catch(() => reply.destroy());
  });
  await listen(server, options.port ?? 0);
  const port = portOf(server);
  return {
    port,
    token,
    launchAddress: `http://127.0.0.1:${port}/#${token}`,
    close: () => close(server),
  };
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host: '127.0.0.1', port, exclusive: true }, () => resolve());
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

async function serve(
  message: IncomingMessage,
  reply: ServerResponse,
  options: LoopbackOptions,
  token: string,
  port: number,
): Promise<void> {
  const wrongHost = refusedHost(message, port);
  if (wrongHost) return refuse(message, reply, wrongHost);
  // Only what starts at the root: an address with a host of its own in the first line is not for us.
  if (!message.url?.startsWith('/')) return refuse(message, reply, { status: 400, reason: 'wrong-path' });
  const path = new URL(`http://127.0.0.1${message.url}`).pathname;
  const name = requestPath.exec(path)?.[1];
  if (name !== undefined) return serveRequest(message, reply, options, token, name);
  if (message.method !== 'GET') return refuse(message, reply, { status: 405, reason: 'wrong-method' });
  const file = readPageFile(options.builtFolder, path);
  if (!file) return refuse(message, reply, { status: 404, reason: 'not-found' });
  send(reply, 200, file.mediaType, file.bytes);
}

async function serveRequest(
  message: IncomingMessage,
  reply: ServerResponse,
  options: LoopbackOptions,
  token: string,
  name: string,
): Promise<void> {
  const refused = refusedRequest(message, token);
  if (refused) return refuse(message, reply, refused);
  const body = await readBody(message, options.mostBodyBytes ?? mostBodyBytes);
  if (!body.ok) return refuse(message, reply, body.problem);
  const input = parseJson(body.value);
  if (!input.ok) return refuse(message, reply, { status: 400, reason: input.problem.code });
  send(reply, 200, jsonType, jsonBytes(options.answer(name, input.value)));
}

/**
 * Says why, and ends the connection once the sender has stopped sending, or after a moment: closed at once,
 * a sender still at it would meet a broken connection and never read why (RFC 9112 section 9.6). What still
 * comes is dropped.
 */
function refuse(message: IncomingMessage, reply: ServerResponse, { status, reason }: Refusal): void {
  reply.setHeader('Connection', 'close');
  reply.write(headed(reply, status, jsonType, jsonBytes({ refused: reason })));
  const end = (): void => {
    clearTimeout(late);
    reply.end();
  };
  const late = setTimeout(end, lingerMs);
  if (message.complete) end();
  else message.once('end', end).once('close', end).resume();
}

const jsonType = 'application/json; charset=utf-8';
const jsonBytes = (value: unknown): Buffer => Buffer.from(JSON.stringify(value));

function send(reply: ServerResponse, status: number, mediaType: string, bytes: Buffer): void {
  reply.end(headed(reply, status, mediaType, bytes));
}

/** The bytes of an answer, after its head was written. */
function headed(reply: ServerResponse, status: number, mediaType: string, bytes: Buffer): Buffer {
  reply.writeHead(status, { ...pageHeaders, 'Content-Type': mediaType, 'Content-Length': bytes.length });
  return bytes;
}
