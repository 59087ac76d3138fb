import type { ReactNode } from 'react';
import type { MapId } from '#core/quantity/id.ts';
import type { BundleSummary, ImportSummary, MapDifference, WhenOther } from '#electron/contract/contract.ts';
import { handoverWords } from '../../language/handover.ts';
import { fileProblemSentence, problemSentence } from '../../language/problems.ts';
import { Button, Choice, Notice, ProblemNotice, Progress } from '../../parts/index.ts';
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
  const { step, read, choose, keep, reset } = bringing;
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
        <Asking
          content={step.content}
          onChoose={(whenOther) => void choose(step.content, whenOther)}
          onKeep={() => void keep(step.content)}
          onNot={reset}
          cancel={cancel}
        />
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
            said={fileProblemSentence(problem, file, more?.nameOf)}
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
  onChoose,
  onKeep,
  onNot,
  cancel,
}: {
  readonly content: FileContent;
  readonly onChoose: (whenOther: WhenOther) => void;
  readonly onKeep: () => void;
  readonly onNot: () => void;
  readonly cancel: ReactNode;
}) {
  const documents =
    content.kind === 'document' ? [{ ...content.summary, entry: '' }] : content.summary.documents;
  const { whenOther } = content;
  const leaves = (document: ImportSummary): boolean =>
    document.sameHere || (document.differs !== null && whenOther === 'ours');
  const nothingNew =
    (content.kind === 'document' ||
      (content.summary.newPictures === 0 && (content.summary.history?.newJobs ?? 0) === 0)) &&
    documents.every(leaves);
  const differ = documents.some((document) => document.differs !== null);
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
            {document.differs ? <Difference difference={document.differs} /> : null}
            {document.differs ? null : <p className="quiet">{fateOf(document)}</p>}
          </li>
        ))}
      </ul>
      {differ ? (
        <Choice
          label={text.whenOther}
          value={whenOther}
          options={whenOthers.map((value) => ({ value, label: text.others[value] }))}
          onChange={onChoose}
        />
      ) : null}
      {differ ? <p className="quiet">{text.fate.others[whenOther]}</p> : null}
      {content.kind === 'bundle' ? <BundleFacts summary={content.summary} /> : null}
      <p className="quiet">
        {nothingNew ? (differ ? text.nothingTaken : text.nothingNew) : text.nothingStored}
      </p>
    </Notice>
  );
}

const whenOthers = ['ours', 'theirs', 'both'] as const satisfies readonly WhenOther[];

const fateOf = ({ sameHere, alreadyHere }: ImportSummary): string =>
  sameHere ? text.fate.same : alreadyHere ? text.fate.copy : text.fate.new;

/** How a map in the file differs from the one that is here. */
function Difference({ difference }: { readonly difference: MapDifference }) {
  const { things } = difference;
  const count = difference.added + difference.moved + difference.changed + difference.removed;
  const shown = things.slice(0, mostFaults);
  return (
    <div>
      <p>{text.differs(difference)}</p>
      <ul className="handover-faults">
        {shown.map(({ how, kind, name, fields }) => (
          <li key={`${how} ${kind} ${name} ${fields.join()}`}>{text.difference(how, kind, name, fields)}</li>
        ))}
        {count > shown.length ? <li>{text.andMore(count - shown.length)}</li> : null}
      </ul>
    </div>
  );
}

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
