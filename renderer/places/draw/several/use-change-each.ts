import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Result } from '#core/quantity/result.ts';
import { inTurn } from '../../../session/in-turn.ts';
import { useDraw } from '../draw-context.ts';

/** Makes one change on each of several things as one step of the history; typing in one field joins into one. */
export function useChangeEach<T extends { readonly id: string }>(
  things: readonly T[],
  change: (map: MapDocument, thing: T, changes: Partial<Omit<T, 'id'>>) => Result<Patch>,
) {
  const { map, make } = useDraw();
  return (
    changesOf: Partial<Omit<T, 'id'>> | ((thing: T) => Partial<Omit<T, 'id'>>),
    joinKey?: string,
  ): void => {
    const steps = things.map((thing) => (now: MapDocument) => {
      const changes = typeof changesOf === 'function' ? changesOf(thing) : changesOf;
      return change(now, thing, changes);
    });
    make(inTurn(map, ...steps), {
      label: 'edit.changeSeveral',
      ...(joinKey ? { joinKey: `${things.map(({ id }) => id).join()}.${joinKey}` } : {}),
    });
  };
}

/** A list of words with one of them in it or not, in the order of all there are. */
export function withWord<T>(all: readonly T[], list: readonly T[], word: T, on: boolean): T[] {
  return all.filter((each) => (each === word ? on : list.includes(each)));
}
