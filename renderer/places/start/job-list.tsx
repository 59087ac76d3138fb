import type { JobId } from '#core/quantity/id.ts';
import type { JobSummary } from '#electron/contract/contract.ts';
import { sayMinutes } from '../../language/find.ts';
import { startWords } from '../../language/start.ts';
import { Figure, List } from '../../parts/index.ts';

const words = startWords.jobs;

/** Open jobs, newest first: vehicle, complaint, stage and minutes spent. */
export function JobList({
  jobs,
  onOpen,
}: {
  readonly jobs: readonly JobSummary[];
  readonly onOpen: (jobId: JobId) => void;
}) {
  return (
    <List label={words.title} items={jobs} keyOf={(job) => job.id} empty={words.empty}>
      {(job) => (
        <button type="button" className="job-line" onClick={() => onOpen(job.id)}>
          <span className="job-line-head">
            <strong>{job.plate || words.noPlate}</strong>
            <span className="quiet">{job.mapName}</span>
          </span>
          <span className="job-line-complaint">{job.complaint || words.noComplaint}</span>
          <span className="job-line-foot">
            <span className={`stage stage-${job.stage}`}>{words.stages[job.stage]}</span>
            <Figure value={sayMinutes(job.minutesSpent)} unit={words.spent} />
          </span>
        </button>
      )}
    </List>
  );
}
