import { closeWords } from '../../language/close.ts';
import { findWords } from '../../language/find.ts';
import { words } from '../../language/words.ts';
import { Button, IconButton } from '../../parts/index.ts';
import { useFind } from '../find/find-context.ts';
import { RecordButtons, Saving } from '../find/record-buttons.tsx';
import { SettingsButton } from '../settings/settings-button.tsx';
import { ClockAndLimit } from './clock-and-limit.tsx';
import { closeHash } from './close-page.ts';

/** Whose car; the clock against the limit; the two sheets; undo. */
export function CloseHeader({
  onLeave,
  onSearch,
}: {
  readonly onLeave: () => void;
  readonly onSearch: () => void;
}) {
  const { open } = useFind();
  const { job, map } = open;
  return (
    <header className="close-header">
      <IconButton label={words.back} sign="back" onClick={onLeave} />
      <div className="close-vehicle">
        <h1>{job.vehicle.plate || findWords.header.noPlate}</h1>
        <p className="quiet">{map.details.name}</p>
      </div>
      <div className="close-actions">
        <ClockAndLimit />
        <Button onClick={onSearch}>{closeWords.toSearch}</Button>
        <a className="button" href={closeHash(job.id, 'bench-sheet')}>
          {closeWords.digSheet}
        </a>
        <a className="button" href={closeHash(job.id, 'report')}>
          {closeWords.report}
        </a>
        <RecordButtons />
        <SettingsButton />
        <Saving />
      </div>
    </header>
  );
}
