import type { PlanPoint } from '#core/geometry/place.ts';
import { addClip } from '#core/map/commands/add-clip.ts';
import { newId } from '#core/quantity/id.ts';
import type { Hit } from '../../board/hit.ts';
import { emptyOverlay } from '../../board/overlay.ts';
import { stay, type Tool } from '../tool.ts';

export interface ClipAim {
  /** Where on a run a press would put the fixing. */
  readonly aim: PlanPoint | null;
}

/** Fixing: a press on a run puts one there. */
export const clipTool: Tool<ClipAim> = {
  start: { aim: null },
  step(state, event, view) {
    if (event.type === 'key' || event.type === 'up') return stay(state);
    const run = runUnder(event.hits);
    if (event.type === 'move') return stay({ aim: run?.at ?? null });
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
