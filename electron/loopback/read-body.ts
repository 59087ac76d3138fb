import type { IncomingMessage } from 'node:http';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Refusal } from './refusal.ts';

/** Reads the whole body of a message as text, and no more than so many bytes of it. */
export async function readBody(
  message: IncomingMessage,
  mostBytes: number,
): Promise<Result<string, Refusal>> {
  const tooLarge: Refusal = { status: 413, reason: 'too-large' };
  if (Number(message.headers['content-length'] ?? 0) > mostBytes) return fail(tooLarge);
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of message as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > mostBytes) return fail(tooLarge);
    parts.push(part);
  }
  return ok(Buffer.concat(parts).toString('utf8'));
}
