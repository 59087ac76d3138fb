import type { ReactNode } from 'react';
import { closeWords } from '../../language/close.ts';
import { findWords } from '../../language/find.ts';
import { driveSideWords, failureTypeWords, words } from '../../language/words.ts';
import { Button, IconButton } from '../../parts/index.ts';
import { ClockAndLimit } from '../close/clock-and-limit.tsx';
import { closeHash } from '../close/close-page.ts';
import { SettingsButton } from '../settings/settings-button.tsx';
import { useFind } from './find-context.ts';
import { RecordButtons, Saving } from './record-buttons.tsx';
import { RefitCount } from './refit-count.tsx';

/** Whose car, what is wrong with it, which circuit is searched; undo, and what must be refitted. */
export function JobHeader({
  onLeave,
  onIntake,
  onKeys,
}: {
  readonly onLeave: () => void;
  readonly onIntake: () => void;
  readonly onKeys: () => void;
}) {
  const { open, say } = useFind();
  const { job, map } = open;
  const circuit = job.circuitId === null ? undefined : map.circuits.get(job.circuitId);
  const { details } = map;
  return (
    <header className="job-header">
      <IconButton label={words.back} sign="back" onClick={onLeave} />
      <div className="job-vehicle">
        <h1>{job.vehicle.plate || findWords.header.noPlate}</h1>
        <p className="quiet">
          {details.name}, {driveSideWords[details.driveSide]}
          {job.vehicle.odometer === null
            ? null
            : `, ${job.vehicle.odometer.toLocaleString('en')} ${job.vehicle.odometerUnit}`}
        </p>
      </div>
      <div className="job-actions">
        <ClockAndLimit />
        <RefitCount />
        <a className="button button-quiet" href={closeHash(job.id)}>
          {closeWords.header.toClose}
        </a>
        <Button weight="quiet" onClick={onIntake}>
          {findWords.header.change}
        </Button>
        <RecordButtons />
        <IconButton label={words.keys} sign="keyboard" onClick={onKeys} />
        <SettingsButton />
        <Saving />
      </div>
      <dl className="job-facts">
        <Fact term={findWords.header.complaint}>
          <span className="complaint-short" title={job.complaint}>
            {job.complaint || findWords.header.noComplaint}
          </span>
        </Fact>
        <Fact term={findWords.header.failure}>{failureTypeWords[job.failureType]}</Fact>
        <Fact term={findWords.header.circuit}>
          {circuit ? (
            <>
              {say(circuit.name)}{' '}
              <span className="mono wire">
                {circuit.wireColours.join('/')} {circuit.conductorMm2}
                <span className="unit"> {findWords.header.size}</span>
              </span>
            </>
          ) : (
            findWords.header.noCircuit
          )}
        </Fact>
      </dl>
    </header>
  );
}

function Fact({ term, children }: { readonly term: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}
