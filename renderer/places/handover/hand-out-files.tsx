import { useState } from 'react';
import type { MapId } from '#core/quantity/id.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { handoverWords } from '../../language/handover.ts';
import { Button, Checkbox, Notice, ProblemNotice, Progress } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { blobOf } from '../draw/picture-bytes.ts';
import { type HandOutKind, type HandOutState, type MadeFile, textFile, useHandOut } from './use-hand-out.ts';

const text = handoverWords.handOut;
const nothingWaits = async (): Promise<void> => {};

/** Hands out a map that is not open: as a document, or as a bundle with its pictures and past finds. */
export function HandOutFiles({ mapId }: { readonly mapId: MapId }) {
  const { state, handOut, stop } = useHandOut();
  return (
    <>
      <FileParts
        mapId={mapId}
        flush={nothingWaits}
        busy={state.at === 'making'}
        onMake={(kind, make) => void handOut(kind, make)}
      />
      <Outcome state={state} onStop={stop} />
    </>
  );
}

/** The two files a map goes into whole. */
export function FileParts({
  mapId,
  flush,
  busy,
  onMake,
}: {
  readonly mapId: MapId;
  /** Puts on disk what still waits, for the host hands out what is there. */
  readonly flush: () => Promise<void>;
  readonly busy: boolean;
  readonly onMake: (kind: HandOutKind, make: () => Promise<Result<MadeFile>>) => void;
}) {
  const [withHistory, setWithHistory] = useState(false);
  const document = async (): Promise<Result<MadeFile>> => {
    await flush();
    const made = await hostClient()('file.handOut', { mapId });
    return made.ok ? textFile(made.value.fileName, made.value.text, 'application/json') : made;
  };
  const bundle = async (): Promise<Result<MadeFile>> => {
    await flush();
    const made = await hostClient()('file.handOutBundle', { mapId, withHistory });
    if (!made.ok) return made;
    const { fileName, base64, missingPictures, historyJobs, historyLeftOut } = made.value;
    const missing = missingPictures.map((picture) => picture.name || picture.sha256.slice(0, 8));
    const said = withHistory ? text.historyDone(historyJobs, historyLeftOut) : '';
    return ok({ fileName, content: blobOf(base64, 'application/zip'), missing, said });
  };
  return (
    <>
      <section className="handover-part" aria-label={text.document}>
        <h2>{text.document}</h2>
        <p className="quiet">{text.documentHint}</p>
        <div className="button-row">
          <Button
            disabled={busy}
            aria-label={`${text.make}: ${text.document}`}
            onClick={() => onMake('document', document)}
          >
            {text.make}
          </Button>
        </div>
      </section>
      <section className="handover-part" aria-label={text.bundle}>
        <h2>{text.bundle}</h2>
        <p className="quiet">{text.bundleHint}</p>
        <Checkbox label={text.history} checked={withHistory} onChange={setWithHistory} />
        {withHistory ? <p className="quiet">{text.historyHint}</p> : null}
        <div className="button-row">
          <Button
            disabled={busy}
            aria-label={`${text.make}: ${text.bundle}`}
            onClick={() => onMake('bundle', bundle)}
          >
            {text.make}
          </Button>
        </div>
      </section>
    </>
  );
}

/** What became of it, and where the file is. */
export function Outcome({ state, onStop }: { readonly state: HandOutState; readonly onStop: () => void }) {
  switch (state.at) {
    case 'rest':
      return null;
    case 'making':
      return (
        <div className="handover-work">
          <Progress label={text.making[state.kind]} />
          <Button onClick={onStop}>{text.stop}</Button>
        </div>
      );
    case 'stopped':
      return <p role="status">{text.stopped}</p>;
    case 'refused':
      return <ProblemNotice problem={state.problem} />;
    case 'done':
      return (
        <div role="status">
          <Notice title={text.done(state.fileName)}>
            <p>{window.undertrim ? text.whereChosen : text.whereDownloads}</p>
            {state.said === '' ? null : <p>{state.said}</p>}
            {state.missing.length > 0 ? <p>{text.missing(state.missing)}</p> : null}
          </Notice>
        </div>
      );
  }
}
