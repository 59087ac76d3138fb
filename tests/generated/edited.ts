import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch, type Patch } from '#core/map/patch.ts';
import type { Result } from '#core/quantity/result.ts';

/** The map after a command that must not be refused; a refusal fails the test with its problem. */
export function edited(map: MapDocument, patch: Result<Patch>): MapDocument {
  if (!patch.ok) throw new Error(`refused: ${JSON.stringify(patch.problem)}`);
  const after = applyPatch(map, patch.value);
  if (!after.ok) throw new Error(`does not apply: ${JSON.stringify(after.problem)}`);
  return after.value;
}
