import { useEffect, useState } from 'react';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { RequestOutput, SearchedJob } from '#electron/contract/contract.ts';
import { codesMeant, damageCauseWords, outcomeWords } from '../../language/close.ts';
import { sayMinutes } from '../../language/find.ts';
import { modelWords } from '../../language/model.ts';
import { startWords } from '../../language/start.ts';
import { Field, Figure, List, ProblemNotice } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';

const words = modelWords.search;

/** A pause in typing this long asks the host. */
const pauseMs = 200;

/** Search over all jobs, or those of one model: by plate, model, circuit, complaint or cause. */
export function PastJobs({
  mapId,
  onOpen,
}: {
  readonly mapId?: MapId;
  readonly onOpen: (jobId: JobId) => void;
}) {
  const [typed, setTyped] = useState('');
  const [found, setFound] = useState<RequestOutput<'jobs.search'> | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  useEffect(() => {
    let current = true;
    const search = async (): Promise<void> => {
      const searched = await hostClient()('jobs.search', {
        words: typed
          .split(/\s+/)
          .filter((word) => word !== '')
          .slice(0, 20)
          .map((word) => ({ text: word.slice(0, 100), codes: [...codesMeant(word)] })),
        ...(mapId ? { mapId } : {}),
      });
      if (!current) return;
      setProblem(searched.ok ? null : searched.problem);
      if (searched.ok) setFound(searched.value);
    };
    const timer = setTimeout(() => void search(), typed === '' ? 0 : pauseMs);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [typed, mapId]);
  return (
    <div className="past-jobs">
      <Field label={words.label} placeholder={words.hint} type="search" value={typed} onChange={setTyped} />
      {problem ? <ProblemNotice problem={problem} title={words.failed} /> : null}
      {found ? (
        <List label={words.title} items={found.jobs} keyOf={(job) => job.id} empty={words.none(typed)}>
          {(job) => <PastJob job={job} onOpen={onOpen} />}
        </List>
      ) : null}
      {found && found.left > 0 ? <p className="quiet">{words.left(found.left)}</p> : null}
    </div>
  );
}

function PastJob({ job, onOpen }: { readonly job: SearchedJob; readonly onOpen: (jobId: JobId) => void }) {
  return (
    <button type="button" className="job-line" onClick={() => onOpen(job.id)}>
      <span className="job-line-head">
        <strong>{job.plate || startWords.jobs.noPlate}</strong>
        <span className="quiet">
          {job.mapName}
          {job.circuitName === '' ? null : `, ${job.circuitName}`}
        </span>
      </span>
      <span className="job-line-complaint">{job.complaint || startWords.jobs.noComplaint}</span>
      {job.causes.length > 0 ? (
        <span className="quiet">{job.causes.map((each) => damageCauseWords[each]).join(', ')}</span>
      ) : null}
      <span className="job-line-foot">
        <span className={`stage stage-${job.stage}`}>
          {job.outcome ? outcomeWords[job.outcome] : startWords.jobs.stages[job.stage]}
        </span>
        <Figure value={sayMinutes(job.minutesSpent)} unit={startWords.jobs.spent} />
      </span>
    </button>
  );
}
