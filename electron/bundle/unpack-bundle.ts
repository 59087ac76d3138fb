import { checkedDocument } from '#core/map/checked-document.ts';
import { parseJson } from '#core/map/parse-json.ts';
import { isOversized, oversized, readPictureHeader } from '#core/map/picture-header.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { foundType, mostPictureBytes, type PictureType, pictureTypeOf } from '../handlers/picture-type.ts';
import {
  type BundleManifest,
  bundleFormat,
  bundleLimits,
  bundleVersion,
  documentEntry,
  manifestEntry,
  manifestSchema,
  pictureEntry,
} from './bundle-manifest.ts';
import { sha256Of } from './pack-bundle.ts';
import { unzipWithin } from './unzip-within.ts';

/** What a bundle holds, each part checked against what the manifest says of it. */
export interface UnpackedBundle {
  readonly documents: readonly { readonly entry: string; readonly text: string }[];
  readonly pictures: readonly {
    readonly sha256: string;
    readonly mediaType: PictureType;
    readonly bytes: Uint8Array;
  }[];
  /** Entries that are no part of a bundle. */
  readonly ignored: readonly string[];
}

/**
 * Reads a bundle's bytes. Problems: `too-large`, `too-many-entries`, `bundle-entry`, `wrong-format` for
 * anything that is no bundle, `newer-version`, `bad-field` in the manifest.
 */
export function unpackBundle(zip: Uint8Array): Result<UnpackedBundle> {
  if (zip.length > bundleLimits.packedBytes) {
    return fail({ code: 'too-large', thing: 'zip', bytes: zip.length, mostBytes: bundleLimits.packedBytes });
  }
  const isZip = zip[0] === 0x50 && zip[1] === 0x4b && (zip[2] === 3 || zip[2] === 5);
  if (!isZip) return fail({ code: 'wrong-format', expected: bundleFormat, found: foundType(zip) });
  const unzipped = unzipWithin(zip, mostBytesOf);
  if (!unzipped.ok) return unzipped;
  const { entries, others } = unzipped.value;
  const manifest = readManifest(entries.get(manifestEntry));
  if (!manifest.ok) return manifest;
  const { documents, pictures } = manifest.value;
  const listed = new Set<string>([manifestEntry]);
  for (const { entry, bytes, sha256 } of [...documents, ...pictures]) {
    const found = entries.get(entry);
    if (!found) return fail({ code: 'bundle-entry', entry, fault: 'missing' });
    if (listed.has(entry)) return fail({ code: 'bundle-entry', entry, fault: 'twice' });
    listed.add(entry);
    if (found.length !== bytes || sha256Of(found) !== sha256) {
      return fail({ code: 'bundle-entry', entry, fault: 'damaged' });
    }
  }
  const shown: UnpackedBundle['pictures'][number][] = [];
  for (const { entry, sha256 } of pictures) {
    const bytes = entries.get(entry) as Buffer;
    const mediaType = pictureTypeOf(bytes);
    const header = readPictureHeader(bytes);
    if (!mediaType || !header || pictureEntry.exec(entry)?.[1] !== sha256) {
      return fail({ code: 'bundle-entry', entry, fault: 'damaged' });
    }
    if (isOversized(header)) return fail(oversized(entry, header));
    shown.push({ sha256, mediaType, bytes });
  }
  return ok({
    documents: documents.map(({ entry }) => ({ entry, text: textOf(entries.get(entry)) })),
    pictures: shown,
    ignored: [...others, ...[...entries.keys()].filter((name) => !listed.has(name))],
  });
}

/** How much a part of a bundle may come out as; null for what is none. */
function mostBytesOf(name: string): number | null {
  if (name === manifestEntry) return bundleLimits.manifestBytes;
  if (documentEntry.test(name)) return bundleLimits.documentBytes;
  return pictureEntry.test(name) ? mostPictureBytes : null;
}

const textOf = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

function readManifest(bytes: Uint8Array | undefined): Result<BundleManifest> {
  if (!bytes) return fail({ code: 'wrong-format', expected: bundleFormat, found: 'application/zip' });
  const parsed = parseJson(textOf(bytes));
  if (!parsed.ok) return parsed;
  const data = parsed.value;
  const head: { format?: unknown; version?: unknown } =
    typeof data === 'object' && data !== null && !Array.isArray(data) ? data : {};
  if (head.format !== bundleFormat) {
    const found = typeof head.format === 'string' ? head.format.slice(0, 80) : '';
    return fail({ code: 'wrong-format', expected: bundleFormat, found });
  }
  if (typeof head.version === 'number' && head.version > bundleVersion) {
    return fail({ code: 'newer-version', found: head.version, known: bundleVersion });
  }
  const read = checkedDocument(manifestSchema, head);
  if (read.ok || read.problem.code !== 'bad-field') return read;
  return fail({ ...read.problem, path: `${manifestEntry}.${read.problem.path}` });
}
