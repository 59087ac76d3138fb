import type { Photo } from '#core/job/closing-entries.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { hostClient } from '../../session/host.ts';
import { type ScaleProgress, scalePicture } from '../../session/scale-picture.ts';
import { base64Of } from '../draw/picture-bytes.ts';

/** Fine enough for a wire on a printed page, and small enough for a report that can be mailed. */
const photoPx = 2_000;

/**
 * Makes a camera's file ready and keeps it: upright, scaled, without where it was taken; the camera's own
 * file as well when asked for. Problems as `scalePicture` and `picture.keep`.
 */
export async function keepPhoto(
  file: File,
  withOriginal: boolean,
  progress: ScaleProgress,
): Promise<Result<Photo>> {
  const scaled = await scalePicture(file, { ...progress, longestPx: photoPx });
  if (!scaled.ok) return scaled;
  const kept = await keep(scaled.value.bytes as Uint8Array<ArrayBuffer>);
  if (!kept.ok) return kept;
  if (!withOriginal) return ok({ sha256: kept.value, caption: '' });
  const original = await keep(new Uint8Array(await file.arrayBuffer()));
  return original.ok ? ok({ sha256: kept.value, originalSha256: original.value, caption: '' }) : original;
}

async function keep(bytes: Uint8Array<ArrayBuffer>): Promise<Result<string>> {
  const kept = await hostClient()('picture.keep', { base64: await base64Of(bytes) });
  return kept.ok ? ok(kept.value.sha256) : kept;
}
