import { request } from 'node:http';
import type { Launch } from './loopback-launch.ts';

/** One message to a loopback host; what is left out is as our own page would send it. */
export interface Sent {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** Sends one message with exactly these headers and gives status and text of the answer. */
export function send(
  { host, ownHeaders }: Launch,
  { method = 'POST', path = '/request/library.list', headers = ownHeaders, body = '{}' }: Sent,
): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const message = request({ host: '127.0.0.1', port: host.port, method, path, headers }, (reply) => {
      let text = '';
      reply.on('data', (part: Buffer) => {
        text += part.toString();
      });
      reply.on('end', () => resolve({ status: reply.statusCode ?? 0, text }));
    });
    message.on('error', reject);
    message.end(method === 'POST' ? body : undefined);
  });
}

/** What a refusal looks like to the one who is refused. */
export const refused = (status: number, reason: string): object => ({
  status,
  text: JSON.stringify({ refused: reason }),
});
