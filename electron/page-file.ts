import { readFileSync, realpathSync, statSync } from 'node:fs';
import { extname, join, resolve, sep } from 'node:path';

/** One file of the built page. */
export interface PageFile {
  readonly bytes: Buffer;
  readonly mediaType: string;
}

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

/**
 * The file of the built page an address path names, `/` being its door. Null for anything outside the
 * folder, reached by dots, links or escapes, and for kinds of file a page has no use for.
 */
export function readPageFile(builtFolder: string, addressPath: string): PageFile | null {
  try {
    const path = decodeURIComponent(addressPath === '/' ? '/index.html' : addressPath);
    const mediaType = mediaTypes[extname(path)];
    if (!path.startsWith('/') || path.includes('\0') || path.includes('\\') || !mediaType) return null;
    const folder = realpathSync(builtFolder);
    const file = realpathSync(resolve(folder, join('.', path)));
    if (!file.startsWith(folder + sep) || !statSync(file).isFile()) return null;
    return { bytes: readFileSync(file), mediaType };
  } catch {
    return null;
  }
}
