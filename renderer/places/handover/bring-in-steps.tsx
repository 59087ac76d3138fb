import type { ReactNode } from 'react';
import type { MapId } from '#core/quantity/id.ts';
import type { BundleSummary, ImportSummary } from '#electron/contract/contract.ts';
import { handoverWords } from '../../language/handover.ts';
import { problemSentence } from '../../language/problems.ts';
import { Button, Notice, ProblemNotice, Progress } from '../../parts/index.ts';
import type { FileContent, useBringIn } from './use-bring-in.ts';

const text = handoverWords.bringIn;
/** More faults than this are not read before the first are put right. */
const mostFaults = 12;

/** Bringing a file in, step by step: what it holds and what would be stored comes before anything is. */
export function BringInSteps({
  bringing,
  cancel,
  hint,
  onOpenMap,
}: {
  readonly bringing: ReturnType<typeof useBringIn>;
  /** The way out, beside the other choices. */
  readonly cancel?: ReactNode;
  readonly hint?: string;
  readonly onOpenMap?: (mapId: MapId) => void;
}) {
  const { step, read, keep, reset } = bringing;
  switch (step.at) {
    case 'reading':
    case 'checking':
      return (
        <div className="handover-work">
          <Progress
            label={step.at === 'reading' ? text.reading : text.checking}
            {...(step.at === 'reading' ? { share: step.share } : {})}
          />
          <Button onClick={reset}>{text.stop}</Button>
        </div>
      );
    case 'storing':
      return <Progress label={text.storing} />;
    case 'asking':
      return (
        <Asking content={step.content} onKeep={() => void keep(step.content)} onNot={reset} cancel={cancel} />
      );
    case 'stored': {
      const { mapId } = step;
      return (
        <Notice
          title={text.stored(step.name)}
          actions={
            <>
              {mapId && onOpenMap ? <Button onClick={() => onOpenMap(mapId)}>{text.open}</Button> : null}
              <FileButton label={text.another} onFile={read} />
            </>
          }
        />
      );
    }
    case 'refused': {
      const { problem, more, file } = step;
      const others = more?.problems ?? [];
      return (
        <>
          <ProblemNotice
            problem={problem}
            title={text.refused(file)}
            {...(more ? { nameOf: more.nameOf } : {})}
          />
          {others.length > 0 ? (
            <div>
              <p className="notice-title">{text.alsoWrong}</p>
              <ul className="handover-faults">
                {others.slice(0, mostFaults).map((each) => {
                  const said = problemSentence(each, more?.nameOf);
                  return (
                    <li key={JSON.stringify(each)}>
                      {said.message} <span className="quiet">{said.hint}</span>
                    </li>
                  );
                })}
                {others.length > mostFaults ? <li>{text.andMore(others.length - mostFaults)}</li> : null}
              </ul>
            </div>
          ) : null}
          <div className="button-row">
            <FileButton label={text.another} onFile={read} />
            {cancel}
          </div>
        </>
      );
    }
    case 'choose':
      return (
        <div className="button-row">
          <FileButton label={text.choose} onFile={read} />
          {cancel}
          {hint ? <p className="quiet file-hint">{hint}</p> : null}
        </div>
      );
  }
}

function FileButton({
  label,
  onFile,
}: {
  readonly label: string;
  readonly onFile: (file: File) => Promise<void>;
}) {
  return (
    <label className="button file-button">
      <input
        type="file"
        accept=".json,.zip,application/json,application/zip"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) void onFile(file);
        }}
      />
      {label}
    </label>
  );
}

/** What the file holds and what would be stored of it. */
function Asking({
  content,
  onKeep,
  onNot,
  cancel,
}: {
  readonly content: FileContent;
  readonly onKeep: () => void;
  readonly onNot: () => void;
  readonly cancel: ReactNode;
}) {
  const documents =
    content.kind === 'document'
      ? [{ ...content.summary, entry: '', sameHere: false }]
      : content.summary.documents;
  const nothingNew =
    content.kind === 'bundle' &&
    content.summary.newPictures === 0 &&
    (content.summary.history?.newJobs ?? 0) === 0 &&
    documents.every((document) => document.sameHere);
  return (
    <Notice
      actions={
        <>
          {nothingNew ? null : (
            <Button weight="main" onClick={onKeep}>
              {text.keep}
            </Button>
          )}
          {cancel ?? <Button onClick={onNot}>{text.another}</Button>}
        </>
      }
    >
      <ul className="handover-documents">
        {documents.map((document) => (
          <li key={document.entry}>
            <strong>
              {text.kinds[document.kind]} {text.named(document.name)}
            </strong>
            <p>{text.holds(document)}</p>
            <p className="quiet">{fateOf(document)}</p>
          </li>
        ))}
      </ul>
      {content.kind === 'bundle' ? <BundleFacts summary={content.summary} /> : null}
      <p className="quiet">{nothingNew ? text.nothingNew : text.nothingStored}</p>
    </Notice>
  );
}

const fateOf = (document: ImportSummary & { readonly sameHere: boolean }): string =>
  document.sameHere ? text.fate.same : document.alreadyHere ? text.fate.copy : text.fate.new;

function BundleFacts({ summary }: { readonly summary: BundleSummary }) {
  const { missingPictures, ignored, newPictures, knownPictures, history } = summary;
  return (
    <>
      {history ? <p>{text.history(history)}</p> : null}
      {newPictures + knownPictures > 0 ? <p>{text.pictures(summary)}</p> : null}
      {missingPictures.length > 0 ? (
        <>
          <p>{text.missing}</p>
          <ul className="handover-faults">
            {missingPictures.map((picture) => (
              <li key={`${picture.documentName} ${picture.sha256}`}>
                {text.missingOne(picture.name, picture.documentName)}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {ignored.length > 0 ? (
        <p className="quiet">
          {text.ignored} {ignored.join(', ')}.
        </p>
      ) : null}
    </>
  );
}
