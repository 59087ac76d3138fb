import { useEffect, useMemo, useState } from 'react';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { RequestOutput } from '#electron/contract/contract.ts';
import { modelWords, sayFirstShare, sayMeanMinutes } from '../../language/model.ts';
import { words } from '../../language/words.ts';
import { Button, IconButton, ProblemNotice, Progress } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { PastJobs } from '../start/past-jobs.tsx';
import { ChafingPicture } from './chafing-picture.tsx';
import { ChafingTable } from './chafing-table.tsx';
import './model.css';

type Past = RequestOutput<'map.past'>;
type Shown =
  | { readonly phase: 'opening' }
  | { readonly phase: 'failed'; readonly problem: Problem }
  | { readonly phase: 'open'; readonly map: MapDocument; readonly past: Past };

/** What past jobs say about one model: a picture and a table of its places, its figures and its jobs. */
export function ModelPlace({
  mapId,
  onLeave,
  onOpenMap,
  onOpenJob,
}: {
  readonly mapId: MapId;
  readonly onLeave: () => void;
  readonly onOpenMap: (mapId: MapId) => void;
  readonly onOpenJob: (jobId: JobId) => void;
}) {
  const shown = usePast(mapId);
  if (shown.phase === 'opening') return <Progress label={words.opening} />;
  if (shown.phase === 'failed') {
    return (
      <main className="find-waiting">
        <ProblemNotice
          problem={shown.problem}
          title={modelWords.failed}
          actions={<Button onClick={onLeave}>{words.back}</Button>}
        />
      </main>
    );
  }
  const { map, past } = shown;
  return (
    <div className="model">
      <header className="model-header">
        <IconButton label={words.back} sign="back" onClick={onLeave} />
        <h1>{map.details.name}</h1>
        <Button onClick={() => onOpenMap(mapId)}>{modelWords.toMap}</Button>
      </header>
      <main className="model-main">
        <section aria-labelledby="model-places">
          <h2 id="model-places">{modelWords.title}</h2>
          {past.places.length === 0 ? (
            <p className="quiet">{modelWords.none}</p>
          ) : (
            <>
              <ChafingPicture map={map} places={past.places} />
              <ChafingTable map={map} places={past.places} />
            </>
          )}
        </section>
        <section aria-labelledby="model-figures">
          <h2 id="model-figures">{modelWords.figures}</h2>
          <p>{modelWords.figureLine(past.figures)}</p>
          <dl className="model-figures">
            <div>
              <dt>{modelWords.minutesToFind}</dt>
              <dd className="figure-large">{sayMeanMinutes(past.figures)}</dd>
            </div>
            <div>
              <dt>{modelWords.firstOpening}</dt>
              <dd className="figure-large">{sayFirstShare(past.figures)}</dd>
            </div>
          </dl>
          <h2>{modelWords.jobs}</h2>
          <PastJobs mapId={mapId} onOpen={onOpenJob} />
        </section>
      </main>
    </div>
  );
}

function usePast(mapId: MapId): Shown {
  const [shown, setShown] = useState<Shown>({ phase: 'opening' });
  const client = useMemo(hostClient, []);
  useEffect(() => {
    let current = true;
    void Promise.all([client('map.open', { mapId }), client('map.past', { mapId })]).then(
      ([opened, past]) => {
        if (!current) return;
        if (!opened.ok) setShown({ phase: 'failed', problem: opened.problem });
        else if (!past.ok) setShown({ phase: 'failed', problem: past.problem });
        else setShown({ phase: 'open', map: mapFromExchange(opened.value.map), past: past.value });
      },
    );
    return () => {
      current = false;
    };
  }, [client, mapId]);
  return shown;
}
