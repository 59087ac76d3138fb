import { createHash } from 'node:crypto';
import { strToU8, type Zippable, zipSync } from 'fflate';
import { documentText } from '#core/map/document-text.ts';
import type { PictureType } from '../handlers/picture-type.ts';
import { type BundleManifest, bundleFormat, bundleVersion, manifestEntry } from './bundle-manifest.ts';

/** One document of a bundle by its file name, such as `hatch.map.json`. */
export interface BundledDocument {
  readonly fileName: string;
  readonly text: string;
}

export interface BundledPicture {
  readonly sha256: string;
  readonly mediaType: PictureType;
  readonly bytes: Uint8Array;
}

const endings: Readonly<Record<PictureType, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

/** The earliest time a zip can say: the same documents always give the same bundle, to the byte. */
const mtime = new Date(1980, 0, 1);

/** A bundle's bytes: manifest, documents pressed small, pictures as they are. */
export function packBundle(
  documents: readonly BundledDocument[],
  pictures: readonly BundledPicture[],
): Uint8Array {
  const parts: Zippable = {};
  const manifest: BundleManifest = {
    format: bundleFormat,
    version: bundleVersion,
    documents: [],
    pictures: [],
  };
  parts[manifestEntry] = new Uint8Array();
  for (const { fileName, text } of documents) {
    const bytes = strToU8(text);
    const entry = `documents/${fileName}`;
    manifest.documents.push({ entry, bytes: bytes.length, sha256: sha256Of(bytes) });
    parts[entry] = [bytes, { level: 6, mtime }];
  }
  for (const { sha256, mediaType, bytes } of pictures) {
    const entry = `pictures/${sha256}.${endings[mediaType]}`;
    manifest.pictures.push({ entry, bytes: bytes.length, sha256 });
    parts[entry] = [bytes, { level: 0, mtime }];
  }
  parts[manifestEntry] = [strToU8(documentText(manifest)), { level: 6, mtime }];
  return zipSync(parts);
}

/** The SHA-256 of some bytes, in small hexadecimal letters. */
export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
