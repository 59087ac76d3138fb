import { Unzip, UnzipInflate } from 'fflate';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { bundleLimits } from './bundle-manifest.ts';

/** The largest piece of zip given to the unpacker at once: even at deflate's best it unpacks to 70 MB. */
const pieceBytes = 65_536;

/** Entries that come from a file manager and mean nothing. */
const isFolder = (name: string): boolean => name.endsWith('/');

/** A name that could lead out of the folder someone unpacks into, on any system. */
export function leadsOut(name: string): boolean {
  return (
    name === '' ||
    name.startsWith('/') ||
    /^[a-z]:/i.test(name) ||
    name.includes('\\') ||
    name.includes('\0') ||
    name.split('/').includes('..')
  );
}

/**
 * What all of a zip may come out as, in bytes: never more than a bundle may hold, and from a small zip not a
 * hundred times its size either. Documents shrink to a tenth, pictures hardly at all; a thousandth is a bomb.
 */
export function mostUnpacked(zipBytes: number): number {
  return Math.min(bundleLimits.unpackedBytes, 10_000_000 + 100 * zipBytes);
}

/**
 * Unpacks a zip into memory, bounded while it comes out and not by what it claims: so many entries, so many
 * bytes together and in each, each name once and none that leads out. `mostBytes` says how much an entry
 * may come out as, null for one that is not unpacked at all; the names of those come back too. Nothing is
 * ever written under an entry's name.
 */
export function unzipWithin(
  zip: Uint8Array,
  mostBytes: (name: string) => number | null,
): Result<{ readonly entries: ReadonlyMap<string, Uint8Array>; readonly others: readonly string[] }> {
  const pieces = new Map<string, Uint8Array[]>();
  const whole = new Set<string>();
  const others: string[] = [];
  const names = new Set<string>();
  const mostTogether = mostUnpacked(zip.length);
  let unpacked = 0;
  let trouble: ReturnType<typeof fail<Trouble>> | null = null;
  const stop = (problem: Trouble): void => {
    trouble ??= fail(problem);
  };
  const unzip = new Unzip((file) => {
    if (trouble) return;
    if (names.size >= bundleLimits.entries) {
      return stop({ code: 'too-many-entries', found: names.size + 1, most: bundleLimits.entries });
    }
    const shown = file.name.slice(0, 200);
    if (leadsOut(file.name)) return stop({ code: 'bundle-entry', entry: shown, fault: 'path' });
    if (names.has(file.name)) return stop({ code: 'bundle-entry', entry: shown, fault: 'twice' });
    names.add(file.name);
    const mostHere = mostBytes(file.name);
    if (mostHere === null) {
      if (!isFolder(file.name)) others.push(shown);
      return;
    }
    const kept: Uint8Array[] = [];
    let here = 0;
    pieces.set(file.name, kept);
    file.ondata = (error, piece, last) => {
      if (trouble) return;
      if (error) return stop({ code: 'bundle-entry', entry: shown, fault: 'damaged' });
      unpacked += piece.length;
      here += piece.length;
      if (here > mostHere) return stop({ code: 'too-large', thing: shown, bytes: here, mostBytes: mostHere });
      if (unpacked > mostTogether) {
        return stop({ code: 'too-large', thing: shown, bytes: unpacked, mostBytes: mostTogether });
      }
      kept.push(piece);
      if (last) whole.add(file.name);
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < zip.length && !trouble; at += pieceBytes) {
      unzip.push(zip.subarray(at, at + pieceBytes), at + pieceBytes >= zip.length);
    }
  } catch {
    // The unpacker throws at a zip that ends too soon or says what no zip may.
    stop({ code: 'bundle-entry', entry: [...names].at(-1)?.slice(0, 200) ?? '', fault: 'damaged' });
  }
  if (trouble) return trouble;
  for (const name of pieces.keys()) {
    if (!whole.has(name)) return fail({ code: 'bundle-entry', entry: name.slice(0, 200), fault: 'damaged' });
  }
  const entries = new Map([...pieces].map(([name, kept]) => [name, Buffer.concat(kept)]));
  return ok({ entries, others });
}

type Trouble =
  | { readonly code: 'too-many-entries'; readonly found: number; readonly most: number }
  | { readonly code: 'bundle-entry'; readonly entry: string; readonly fault: 'path' | 'twice' | 'damaged' }
  | {
      readonly code: 'too-large';
      readonly thing: string;
      readonly bytes: number;
      readonly mostBytes: number;
    };
