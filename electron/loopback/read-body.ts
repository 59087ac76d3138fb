import type { IncomingMessage } from 'node:http';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Refusal } from './refusal.ts';

/**
 * Reads the whole body of a message as text, and no more than so many bytes of it. One that is too large is
 * known as such the moment it is; its connection stays, so that the sender can be told.
 */
export function readBody(message: IncomingMessage, mostBytes: number): Promise<Result<string, Refusal>> {
  const tooLarge = fail({ status: 413, reason: 'too-large' });
  if (Number(message.headers['content-length'] ?? 0) > mostBytes) return Promise.resolve(tooLarge);
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    let size = 0;
    const keep = (part: Buffer): void => {
      size += part.length;
      if (size <= mostBytes) {
        parts.push(part);
        return;
      }
      message.off('data', keep);
      message.pause();
      parts.length = 0;
      resolve(tooLarge);
    };
    message.on('data', keep);
    message.once('end', () => resolve(ok(Buffer.concat(parts).toString('utf8'))));
    message.once('error', reject);
  });
}
