import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch, emptyPatch, type Patch, squashPatches } from '#core/map/patch.ts';
import { ok, type Result } from '#core/quantity/result.ts';

/** Several commands as one patch: each sees what those before it did. The first refusal refuses all. */
export function inTurn(
  document: MapDocument,
  ...commands: readonly ((document: MapDocument) => Result<Patch>)[]
): Result<Patch> {
  let now = document;
  let whole: Patch = emptyPatch;
  for (const command of commands) {
    const patch = command(now);
    if (!patch.ok) return patch;
    const next = applyPatch(now, patch.value);
    if (!next.ok) return next;
    now = next.value;
    whole = squashPatches(whole, patch.value);
  }
  return ok(whole);
}
