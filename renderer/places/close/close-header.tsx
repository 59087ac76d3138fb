import { closeWords } from '../../language/close.ts';
import { findWords } from '../../language/find.ts';
import { words } from '../../language/words.ts';
import { Button, IconButton } from '../../parts/index.ts';
import { entryHistory } from '../../session/entry-history.ts';
import { useFind } from '../find/find-context.ts';
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
  const { open, session } = useFind();
  const { job, map } = open;
  const history = entryHistory(job);
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
        <IconButton
          label={words.undo}
          sign="undo"
          disabled={history.undo === null}
          onClick={() => session.undo()}
        />
        <IconButton
          label={words.redo}
          sign="redo"
          disabled={history.redo === null}
          onClick={() => session.redo()}
        />
        <SettingsButton />
        {open.saving === 'failed' ? (
          <Button onClick={() => session.saveAgain()}>
            {words.notSaved}. {words.tryAgain}
          </Button>
        ) : (
          <span className="saving quiet">{open.saving === 'saved' ? words.saved : words.saving}</span>
        )}
      </div>
    </header>
  );
}
