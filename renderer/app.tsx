import { lazy, Suspense, useEffect, useSyncExternalStore } from 'react';
import { words } from './language/words.ts';
import { PaperGrid, Progress } from './parts/index.ts';
import { hashOf, type Place, placeOf } from './place.ts';
import { useTheme } from './theme/use-theme.ts';

const StartPlace = lazy(async () => ({
  default: (await import('./places/start/start-place.tsx')).StartPlace,
}));
const DrawPlace = lazy(async () => ({ default: (await import('./places/draw/draw-place.tsx')).DrawPlace }));
const ModelPlace = lazy(async () => ({
  default: (await import('./places/model/model-place.tsx')).ModelPlace,
}));
const FindPlace = lazy(async () => ({ default: (await import('./places/find/find-place.tsx')).FindPlace }));

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
        {place.at === 'find' || place.at === 'close' ? (
          <FindPlace
            key={place.jobId}
            jobId={place.jobId}
            closing={place.at === 'close' ? place.page : null}
            onLeave={() => go({ at: 'start' })}
            onOpenMap={(mapId) => go({ at: 'draw', mapId })}
            onOpenJob={(jobId) => go({ at: 'find', jobId })}
          />
        ) : null}
        {place.at === 'model' ? (
          <ModelPlace
            key={place.mapId}
            mapId={place.mapId}
            onLeave={() => go({ at: 'start' })}
            onOpenMap={(mapId) => go({ at: 'draw', mapId })}
            onOpenJob={(jobId) => go({ at: 'find', jobId })}
          />
        ) : null}
      </Suspense>
    </div>
  );
}
