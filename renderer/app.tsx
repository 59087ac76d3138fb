import { lazy, Suspense, useEffect, useSyncExternalStore } from 'react';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { words } from './language/words.ts';
import { PaperGrid, Progress } from './parts/index.ts';
import { useTheme } from './theme/use-theme.ts';

const StartPlace = lazy(async () => ({
  default: (await import('./places/start/start-place.tsx')).StartPlace,
}));
const DrawPlace = lazy(async () => ({ default: (await import('./places/draw/draw-place.tsx')).DrawPlace }));
const FindPlace = lazy(async () => ({ default: (await import('./places/find/find-place.tsx')).FindPlace }));

/** Where the user is; kept in the address so that reloading and going back work. */
export type Place =
  | { readonly at: 'start' }
  | { readonly at: 'draw'; readonly mapId: MapId }
  | { readonly at: 'find'; readonly jobId: JobId };

/** The place an address names; anything else is the start. */
export function placeOf(hash: string): Place {
  const [, at, id] = /^#\/(map|job)\/(.+)$/.exec(hash) ?? [];
  if (at === 'map' && id) return { at: 'draw', mapId: id as MapId };
  if (at === 'job' && id) return { at: 'find', jobId: id as JobId };
  return { at: 'start' };
}

/** The address of a place. */
export function hashOf(place: Place): string {
  if (place.at === 'draw') return `#/map/${place.mapId}`;
  if (place.at === 'find') return `#/job/${place.jobId}`;
  return '#/';
}

const onHash = (tell: () => void): (() => void) => {
  window.addEventListener('hashchange', tell);
  return () => window.removeEventListener('hashchange', tell);
};

const go = (place: Place): void => {
  window.location.hash = hashOf(place);
};

/** The whole application: one place at a time on the drawing board. */
export function App() {
  const theme = useTheme();
  const hash = useSyncExternalStore(onHash, () => window.location.hash);
  const place = placeOf(hash);
  useEffect(() => {
    document.title = `${words.places[place.at]} – ${words.application}`;
  }, [place.at]);
  return (
    <div className="app" data-theme={theme}>
      <PaperGrid />
      <Suspense fallback={<Progress label={words.opening} />}>
        {place.at === 'start' ? (
          <StartPlace
            onOpenMap={(mapId) => go({ at: 'draw', mapId })}
            onOpenJob={(jobId) => go({ at: 'find', jobId })}
          />
        ) : null}
        {place.at === 'draw' ? (
          <DrawPlace
            key={place.mapId}
            mapId={place.mapId}
            onLeave={() => go({ at: 'start' })}
            onOpenJob={(jobId) => go({ at: 'find', jobId })}
          />
        ) : null}
        {place.at === 'find' ? (
          <FindPlace
            key={place.jobId}
            jobId={place.jobId}
            onLeave={() => go({ at: 'start' })}
            onOpenMap={(mapId) => go({ at: 'draw', mapId })}
            onOpenJob={(jobId) => go({ at: 'find', jobId })}
          />
        ) : null}
      </Suspense>
    </div>
  );
}
