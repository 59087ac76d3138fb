import { deflateRawSync, inflateRawSync } from 'node:zlib';

/**
 * JSON pressed small (raw DEFLATE, RFC 1951): undo steps and pinned maps repeat themselves, and there
 * are many of them.
 */
export function packJson(value: unknown): Buffer {
  return deflateRawSync(JSON.stringify(value), { level: 3 });
}

/** What `packJson` packed. */
export function unpackJson(packed: Uint8Array): unknown {
  return JSON.parse(inflateRawSync(packed).toString('utf8'));
}
