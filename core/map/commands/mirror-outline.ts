import type { OutlineId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import { addRecord } from '../add-record.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { mirroredVertex } from '../mirror-geometry.ts';
import { otherSideName } from '../other-side-name.ts';
import type { Patch } from '../patch.ts';
import type { Vertex } from '../records.ts';
import { changeOutline } from './change-outline.ts';

const turnedRound = (vertex: Vertex): Vertex => ({
  xMm: vertex.xMm,
  yMm: vertex.yMm,
  ...(vertex.handleOut ? { handleIn: vertex.handleOut } : {}),
  ...(vertex.handleIn ? { handleOut: vertex.handleIn } : {}),
});

/**
 * Mirrors an outline about the centre line: `copy` adds a second one under `copyId` (a left seat gives
 * the right one, named so), `complete` makes a half that was drawn open into one closed whole. Corners on the centre
 * line are not doubled. Refuses `not-found`, `duplicate-id` and, for `complete`, a closed outline
 * (`bad-value`) or one too short (`too-few-points`).
 * @example
 * mirrorOutline(sample.map, { outlineId: 'outline:none', how: 'complete' }).problem.code // => 'not-found'
 */
export function mirrorOutline(
  map: MapDocument,
  input:
    | { readonly outlineId: OutlineId; readonly how: 'copy'; readonly copyId: OutlineId }
    | { readonly outlineId: OutlineId; readonly how: 'complete' },
): Result<Patch> {
  const found = findRecord(map.outlines, input.outlineId);
  if (!found.ok) return found;
  const outline = found.value;
  const centre = map.details.centreLineYMm;
  const mirrored = outline.vertices.map((vertex) => mirroredVertex(vertex, centre));
  if (input.how === 'copy') {
    const name = otherSideName(outline.name);
    return addRecord(map, { ...outline, id: input.copyId, name, vertices: mirrored });
  }
  if (outline.closed) {
    return fail({ code: 'bad-value', field: 'closed', value: 'true', allowed: 'false' });
  }
  const onCentre = (vertex: Vertex): boolean => Math.abs(vertex.yMm - centre) < samePlaceMm;
  const vertices: Vertex[] = outline.vertices.map((vertex) =>
    onCentre(vertex) ? { ...vertex, yMm: centre } : vertex,
  );
  const last = outline.vertices.length - 1;
  for (let i = last; i >= 0; i--) {
    const twin = turnedRound(mirrored[i] as Vertex);
    if (!onCentre(twin) || (i > 0 && i < last)) {
      vertices.push(twin);
      continue;
    }
    // An end on the centre line belongs to both halves: it only takes over the far half's handle.
    const at = i === 0 ? 0 : last;
    const kept = vertices[at] as Vertex;
    const handle = i === 0 ? { handleIn: twin.handleIn } : { handleOut: twin.handleOut };
    if (Object.values(handle)[0]) vertices[at] = { ...kept, ...handle };
  }
  if (vertices.length < 3) return fail({ code: 'too-few-points', needed: 3, found: vertices.length });
  return changeOutline(map, { outlineId: outline.id, changes: { vertices, closed: true } });
}
