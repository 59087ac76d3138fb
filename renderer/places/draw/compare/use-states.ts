import { useEffect, useState } from 'react';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { hostClient } from '../../../session/host.ts';
import type { MapSession } from '../../../session/map-session.ts';
import type { MapStateLine } from './notable-states.ts';

/** Something asked of the host: not here yet, here, or refused. */
export type Asked<T> =
  | { readonly at: 'asking' }
  | { readonly at: 'here'; readonly value: T }
  | { readonly at: 'refused'; readonly problem: Problem };

const asking = { at: 'asking' } as const;

/** Every state of a map, newest first, as it was when this was opened; what waits is put on disk first. */
export function useStates(mapId: MapId, session: MapSession): Asked<readonly MapStateLine[]> {
  const [states, setStates] = useState<Asked<readonly MapStateLine[]>>(asking);
  useEffect(() => {
    let current = true;
    void session.flush().then(async () => {
      const listed = await hostClient()('map.revisions', { mapId });
      if (!current) return;
      setStates(
        listed.ok
          ? { at: 'here', value: listed.value.revisions }
          : { at: 'refused', problem: listed.problem },
      );
    });
    return () => {
      current = false;
    };
  }, [mapId, session]);
  return states;
}

/** The map as it stood at a revision; null for none chosen. Each is opened once. */
export function useMapAt(mapId: MapId, revision: number | null): Asked<MapDocument> | null {
  const [opened, setOpened] = useState<ReadonlyMap<number, Asked<MapDocument>>>(new Map());
  const known = revision === null ? undefined : opened.get(revision);
  useEffect(() => {
    if (revision === null || known) return;
    let current = true;
    void hostClient()('map.open', { mapId, revision }).then((reply) => {
      if (!current) return;
      const answer: Asked<MapDocument> = reply.ok
        ? { at: 'here', value: mapFromExchange(reply.value.map) }
        : { at: 'refused', problem: reply.problem };
      setOpened((before) => new Map(before).set(revision, answer));
    });
    return () => {
      current = false;
    };
  }, [mapId, revision, known]);
  return revision === null ? null : (known ?? asking);
}
