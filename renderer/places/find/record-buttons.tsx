import { words } from '../../language/words.ts';
import { Button, IconButton } from '../../parts/index.ts';
import { entryHistory } from '../../session/entry-history.ts';
import { useFind } from './find-context.ts';

/** Undo and redo of the job's entries. */
export function RecordButtons() {
  const { open, session } = useFind();
  const history = entryHistory(open.job);
  return (
    <>
      <IconButton
        label={words.undo}
        sign="undo"
        disabled={history.undo.length === 0}
        onClick={() => session.undo()}
      />
      <IconButton
        label={words.redo}
        sign="redo"
        disabled={history.redo.length === 0}
        onClick={() => session.redo()}
      />
    </>
  );
}

/** Whether the entries are on disk, and a way to try again where they are not. */
export function Saving() {
  const { open, session } = useFind();
  if (open.saving === 'failed') {
    return (
      <Button onClick={() => session.saveAgain()}>
        {words.notSaved}. {words.tryAgain}
      </Button>
    );
  }
  return <span className="saving quiet">{open.saving === 'saved' ? words.saved : words.saving}</span>;
}
