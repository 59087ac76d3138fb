import { useState } from 'react';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { MapSummary } from '#electron/contract/contract.ts';
import { modelWords } from '../../language/model.ts';
import { startWords } from '../../language/start.ts';
import { bodyStyleWords, driveSideWords, words as plainWords } from '../../language/words.ts';
import { Button, IconButton } from '../../parts/index.ts';
import '../handover/handover.css';
import { HandOutFiles } from '../handover/hand-out-files.tsx';
import { CopyMap } from './copy-map.tsx';
import { MapPicture } from './map-picture.tsx';
import { NewJob } from './new-job.tsx';
import { RemoveMap } from './remove-map.tsx';

type Open = 'job' | 'more' | 'copy' | 'hand-out' | 'remove';
const words = startWords.maps;

/** One vehicle map: its picture, its past, and what can be done with it, in place. */
export function MapCard({
  map,
  onOpenMap,
  onOpenJob,
  onChanged,
}: {
  readonly map: MapSummary;
  readonly onOpenMap: (mapId: MapId) => void;
  readonly onOpenJob: (jobId: JobId) => void;
  readonly onChanged: () => void;
}) {
  const [open, setOpen] = useState<Open | null>(null);
  const toggle = (what: Open): void => setOpen(open === what ? null : what);
  const close = (): void => setOpen(null);
  return (
    <article className={`map-card${open ? ' map-card-open' : ''}`} aria-label={map.name}>
      <button type="button" className="map-face" onClick={() => onOpenMap(map.id)}>
        <MapPicture picture={map.picture} />
        <span className="map-face-words">
          <strong>{map.name}</strong>
          <span className="quiet">
            {bodyStyleWords[map.bodyStyle]}, {driveSideWords[map.driveSide]}
          </span>
          <span className="quiet">
            {words.jobs(map.jobCount)}, {words.finds(map.findCount)}
          </span>
        </span>
      </button>
      <div className="map-corner">
        <IconButton
          label={words.more(map.name)}
          sign="more"
          aria-expanded={open !== null && open !== 'job'}
          onClick={() => toggle('more')}
        />
      </div>
      <div className="map-actions">
        <Button
          aria-label={startWords.newJob(map.name)}
          aria-expanded={open === 'job'}
          onClick={() => toggle('job')}
        >
          {startWords.newJobShort}
        </Button>
        {map.jobCount > 0 ? (
          <a className="button" href={`#/model/${map.id}`} aria-label={modelWords.open(map.name)}>
            {modelWords.openShort}
          </a>
        ) : null}
      </div>
      {open === 'more' ? (
        <div className="map-more button-row">
          <Button onClick={() => setOpen('copy')}>{startWords.copy.title}</Button>
          <Button onClick={() => setOpen('hand-out')}>{startWords.handOut}</Button>
          <Button onClick={() => setOpen('remove')}>{startWords.remove.title}</Button>
        </div>
      ) : null}
      {open === 'job' ? <NewJob map={map} onOpenJob={onOpenJob} onCancel={close} /> : null}
      {open === 'copy' ? (
        <CopyMap
          map={map}
          onCancel={close}
          onCopied={() => {
            close();
            onChanged();
          }}
        />
      ) : null}
      {open === 'hand-out' ? (
        <section className="card-form" aria-label={startWords.handOut}>
          <HandOutFiles mapId={map.id} />
          <div className="button-row">
            <Button onClick={close}>{plainWords.close}</Button>
          </div>
        </section>
      ) : null}
      {open === 'remove' ? <RemoveMap map={map} onCancel={close} onRemoved={onChanged} /> : null}
    </article>
  );
}
