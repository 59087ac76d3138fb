import { idKind } from '../quantity/id.ts';
import type { Result } from '../quantity/result.ts';
import { ok } from '../quantity/result.ts';
import { removeThings } from './commands/remove-things.ts';
import type { MapDocument, MapRecord } from './map-document.ts';
import type { Circuit, MapNode, Panel, Segment } from './records.ts';

/** What a removal would do beyond the picked things themselves. */
export interface Dependent {
  readonly thing: string;
  /**
   * `removed` goes as well; `untraced` loses its path; `end-cleared` no longer knows where it ends; the rest
   * lose their mention of what goes.
   */
  readonly effect:
    | 'removed'
    | 'untraced'
    | 'end-cleared'
    | 'pins-dropped'
    | 'tags-dropped'
    | 'order-line-dropped'
    | 'reach-dropped';
}

/**
 * Names what would go or change if some things were removed, the things themselves left out. It is
 * read off the removal itself, so it cannot say anything else than what happens. Refuses `not-found`.
 * @example
 * dependents(sample.map, ['node:far']).value // => [{ thing: 'segment:rear', effect: 'removed' }, { thing: 'circuit:seat-switch', effect: 'untraced' }, { thing: 'circuit:seat-switch', effect: 'end-cleared' }]
 */
export function dependents(map: MapDocument, ids: readonly string[]): Result<readonly Dependent[]> {
  const patch = removeThings(map, { ids });
  if (!patch.ok) return patch;
  const picked = new Set(ids);
  const removed = patch.value.removed
    .filter((record) => !picked.has(record.id))
    .map((record): Dependent => ({ thing: record.id, effect: 'removed' }));
  const changed = patch.value.changed.flatMap(([before, after]) =>
    effectsOn(before, after).map((effect): Dependent => ({ thing: before.id, effect })),
  );
  return ok([...removed, ...changed]);
}

function effectsOn(before: MapRecord, after: MapRecord): readonly Dependent['effect'][] {
  switch (idKind(before.id)) {
    case 'circuit': {
      const was = before as Circuit;
      const is = after as Circuit;
      const effects: Dependent['effect'][] = [];
      if (was.path.length > is.path.length) effects.push('untraced');
      if (was.ends.some((end, i) => end.nodeId !== is.ends[i]?.nodeId)) effects.push('end-cleared');
      if (was.pins.length > is.pins.length) effects.push('pins-dropped');
      return effects;
    }
    case 'segment':
      return (before as Segment).tags.length > (after as Segment).tags.length ? ['tags-dropped'] : [];
    case 'panel':
      return (before as Panel).offFirst.length > (after as Panel).offFirst.length
        ? ['order-line-dropped']
        : [];
    case 'node':
      return (before as MapNode).panelIds.length > (after as MapNode).panelIds.length
        ? ['reach-dropped']
        : [];
    default:
      return [];
  }
}
