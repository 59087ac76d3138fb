import { z } from 'zod';

export const bundleFormat = 'undertrim.bundle';
export const bundleVersion = 1;

/** The entry that says what a bundle holds; always the first. */
export const manifestEntry = 'bundle.json';

/** Where documents and pictures lie in a bundle: one folder each, plain names. */
export const documentEntry = /^documents\/[a-z0-9][a-z0-9.-]{0,99}\.(map|job)\.json$/;
export const pictureEntry = /^pictures\/([0-9a-f]{64})\.(jpg|png|webp)$/;

/** Bounds against a bundle made to fill the memory; whatever a workshop hands out stays far below. */
export const bundleLimits = {
  /** The zip itself, as it is carried in one message. */
  packedBytes: 70_000_000,
  /** Everything in it together, unpacked. */
  unpackedBytes: 200_000_000,
  documentBytes: 64_000_000,
  /** A line for each of 2,000 entries. */
  manifestBytes: 2_000_000,
  entries: 2_000,
} as const;

const listed = { entry: z.string().max(200), bytes: z.number().int().min(0), sha256: z.string().length(64) };

/** What a bundle holds, with what each part must come out as. */
export const manifestSchema = z.strictObject({
  format: z.literal(bundleFormat),
  version: z.literal(bundleVersion),
  documents: z.array(z.strictObject({ ...listed, entry: listed.entry.regex(documentEntry) })),
  pictures: z.array(z.strictObject({ ...listed, entry: listed.entry.regex(pictureEntry) })),
});
export type BundleManifest = z.infer<typeof manifestSchema>;
