import { useState } from 'react';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { backupWords } from '../../language/backups.ts';
import { modelWords } from '../../language/model.ts';
import { startWords } from '../../language/start.ts';
import { words } from '../../language/words.ts';
import { Button, Disclosure, Field, Notice, ProblemNotice, Progress } from '../../parts/index.ts';
import { useBackups } from '../../session/use-backups.ts';
import { SettingsButton } from '../settings/settings-button.tsx';
import { Backups } from './backups.tsx';
import { BringIn } from './bring-in.tsx';
import { JobList } from './job-list.tsx';
import { LossNotice } from './loss-notice.tsx';
import { MapCard } from './map-card.tsx';
import { matchMaps } from './match-maps.ts';
import { NewMap } from './new-map.tsx';
import { PastJobs } from './past-jobs.tsx';
import { ShopFigures } from './shop-figures.tsx';
import { useDrop } from './use-drop.ts';
import { noteBegun, useFirstStart } from './use-first-start.ts';
import { type Library, useLibrary } from './use-library.ts';
import { WorkTrouble } from './work-trouble.tsx';

export interface StartPlaceProps {
  readonly onOpenMap: (mapId: MapId) => void;
  readonly onOpenJob: (jobId: JobId) => void;
}

/** Vehicles and jobs: what is open, what is drawn, and the ways to begin. */
export function StartPlace(props: StartPlaceProps) {
  const [library, read] = useLibrary();
  const onOpenMap = (mapId: MapId): void => {
    noteBegun();
    props.onOpenMap(mapId);
  };
  const onOpenJob = (jobId: JobId): void => {
    noteBegun();
    props.onOpenJob(jobId);
  };
  return (
    <div className="start">
      <header className="start-header">
        <h1>{words.application}</h1>
        <SettingsButton />
      </header>
      <main className="start-main">
        {library.phase === 'loading' ? <Progress label={words.opening} /> : null}
        {library.phase === 'failed' ? (
          <ProblemNotice
            problem={library.problem}
            title={startWords.failed}
            actions={
              <Button weight="main" onClick={() => void read()}>
                {words.tryAgain}
              </Button>
            }
          />
        ) : null}
        {library.phase === 'ready' ? (
          <Lists
            onOpenMap={onOpenMap}
            onOpenJob={onOpenJob}
            library={library}
            onChanged={() => void read()}
          />
        ) : null}
      </main>
    </div>
  );
}

function Lists({
  library,
  onOpenMap,
  onOpenJob,
  onChanged,
}: StartPlaceProps & {
  readonly library: Extract<Library, { phase: 'ready' }>;
  readonly onChanged: () => void;
}) {
  const [typed, setTyped] = useState('');
  const [fold, setFold] = useState<'past' | 'figures' | 'backups' | null>(null);
  const [form, setForm] = useState<'map' | 'file' | null>(null);
  const [dropped, setDropped] = useState<File | null>(null);
  const [stored, setStored] = useState<string | null>(null);
  const over = useDrop((file) => {
    setDropped(file);
    setForm('file');
  });
  const first = useFirstStart();
  const kept = useBackups();
  const trouble = kept.state?.trouble ?? null;
  const shown = matchMaps(library.maps, typed);
  const close = (): void => {
    setForm(null);
    setDropped(null);
  };
  return (
    <>
      <LossNotice />
      {trouble ? (
        <div className="backup-trouble">
          <WorkTrouble title={backupWords.trouble[trouble]} code={`backup ${trouble}`} />
        </div>
      ) : null}
      {first ? <p className="first-time">{startWords.firstTime}</p> : null}
      {over ? <div className="drop-here">{startWords.bringIn.drop}</div> : null}
      <div className="start-lists">
        <section className="start-jobs" aria-labelledby="jobs-title">
          <h2 id="jobs-title">{startWords.jobs.title}</h2>
          <JobList jobs={library.jobs} onOpen={onOpenJob} />
          <Disclosure
            label={modelWords.search.title}
            open={fold === 'past'}
            onToggle={(open) => setFold(open ? 'past' : null)}
          >
            <PastJobs onOpen={onOpenJob} />
          </Disclosure>
          <Disclosure
            label={modelWords.figures}
            open={fold === 'figures'}
            onToggle={(open) => setFold(open ? 'figures' : null)}
          >
            <ShopFigures />
          </Disclosure>
          <Disclosure
            label={backupWords.title}
            open={fold === 'backups'}
            onToggle={(open) => setFold(open ? 'backups' : null)}
          >
            <Backups kept={kept} onWentBack={onChanged} />
          </Disclosure>
        </section>
        <section className="start-maps" aria-labelledby="maps-title">
          <div className="start-maps-head">
            <h2 id="maps-title">{startWords.maps.title}</h2>
            <div className="button-row">
              <Button weight="main" aria-expanded={form === 'map'} onClick={() => setForm('map')}>
                {startWords.newMap.title}
              </Button>
              <Button aria-expanded={form === 'file'} onClick={() => setForm('file')}>
                {startWords.bringIn.title}
              </Button>
            </div>
          </div>
          {form === 'map' ? <NewMap onMade={onOpenMap} onCancel={close} /> : null}
          {form === 'file' ? (
            <BringIn
              dropped={dropped}
              onCancel={close}
              onStored={(name) => {
                close();
                setStored(name);
                onChanged();
              }}
            />
          ) : null}
          {stored ? <Notice>{startWords.bringIn.stored(stored)}</Notice> : null}
          {library.maps.length > 0 ? (
            <Field
              label={startWords.maps.search}
              placeholder={startWords.maps.searchHint}
              type="search"
              value={typed}
              onChange={setTyped}
            />
          ) : (
            <p className="list-empty quiet">{startWords.maps.empty}</p>
          )}
          {library.maps.length > 0 && shown.length === 0 ? (
            <p className="list-empty quiet">{startWords.maps.noMatch(typed)}</p>
          ) : null}
          <div className="map-cards">
            {shown.map((map) => (
              <MapCard
                key={map.id}
                map={map}
                onOpenMap={onOpenMap}
                onOpenJob={onOpenJob}
                onChanged={onChanged}
              />
            ))}
          </div>
        </section>
      </div>
    </>
  );
}
