import type { PlanPoint } from '#core/geometry/place.ts';
import { addClip } from '#core/map/commands/add-clip.ts';
import { changeClip } from '#core/map/commands/change-clip.ts';
import { newId } from '#core/quantity/id.ts';
import type { Hit } from '../../board/hit.ts';
import { emptyOverlay } from '../../board/overlay.ts';
import { stay, type Tool } from '../tool.ts';

export interface ClipAim {
  /** Where on a run a press would put the fixing. */
  readonly aim: PlanPoint | null;
}

/** Fixing: a press on a run puts one there; a press on one says it is missing on this model, or there after all. */
export const clipTool: Tool<ClipAim> = {
  start: { aim: null },
  step(state, event, view) {
    if (event.type === 'key' || event.type === 'up') return stay(state);
    const run = runUnder(event.hits);
    const known = event.hits.find((hit) => hit.kind === 'clip');
    if (event.type === 'move') return stay({ aim: known?.at ?? run?.at ?? null });
    if (known && event.type === 'down') {
      const { id: clipId, segmentId } = known;
      const clip = view.map.segments.get(segmentId)?.clips.find((each) => each.id === clipId);
      const changes = { missing: !clip?.missing };
      const patch = changeClip(view.map, { segmentId, clipId, changes });
      return { state, effects: [{ type: 'edit', label: 'edit.changeClip', patch, select: [clipId] }] };
    }
    if (!run || event.type === 'double') return stay(state);
    const id = newId('clip', view.chance);
    const patch = addClip(view.map, {
      segmentId: run.id,
      clip: { id, stationMm: run.stationMm, kind: view.choices.clipKind, missing: false },
    });
    return { state, effects: [{ type: 'edit', label: 'edit.addClip', patch, select: [id] }] };
  },
  overlay: ({ aim }) => (aim ? { ...emptyOverlay, points: [{ at: aim, style: 'snap' }] } : emptyOverlay),
};

const runUnder = (hits: readonly Hit[]) => hits.find((hit) => hit.kind === 'segment');
