import { memo } from 'react';
import { drawWords } from '../../language/draw.ts';
import { compareWords } from '../../language/draw-compare.ts';
import { findWords } from '../../language/draw-find.ts';
import { problemSentence } from '../../language/problems.ts';
import { bodyStyleWords, driveSideWords, words } from '../../language/words.ts';
import { Button, IconButton } from '../../parts/index.ts';
import { SettingsButton } from '../settings/settings-button.tsx';
import { useDraw } from './draw-context.ts';

/** Which map this is, undo and redo, and whether all of it is on disk. */
export const DrawHeader = memo(function DrawHeader({
  onLeave,
  onKeys,
  onNewJob,
  onFind,
  onTask,
  taskOpen,
}: {
  readonly onLeave: () => void;
  readonly onKeys: () => void;
  readonly onNewJob: () => void;
  readonly onFind: () => void;
  readonly onTask: () => void;
  readonly taskOpen: boolean;
}) {
  const { open, map, session } = useDraw();
  const { name, bodyStyle, driveSide } = map.details;
  return (
    <header className="draw-header">
      <IconButton label={words.back} sign="back" onClick={onLeave} />
      <div className="draw-title">
        <h1>{name}</h1>
        <p className="quiet">
          {bodyStyleWords[bodyStyle]}, {driveSideWords[driveSide]}
        </p>
      </div>
      <Status />
      <div className="draw-header-actions">
        <IconButton
          label={words.undo}
          sign="undo"
          disabled={open.history.done.length === 0}
          onClick={() => session.undo()}
        />
        <IconButton
          label={words.redo}
          sign="redo"
          disabled={open.history.undone.length === 0}
          onClick={() => session.redo()}
        />
        <IconButton label={findWords.title} sign="search" aria-keyshortcuts="Control+F" onClick={onFind} />
        <IconButton label={compareWords.tasks} sign="more" pressed={taskOpen} onClick={onTask} />
        <IconButton label={words.keys} sign="keyboard" onClick={onKeys} />
        <SettingsButton />
        <Button weight="main" onClick={onNewJob}>
          {drawWords.openJob}
        </Button>
      </div>
    </header>
  );
});

/** Whether every change is on disk; if not, why, and the way to try again. */
function Status() {
  const { open, session } = useDraw();
  if (open.saving === 'failed' && open.saveProblem) {
    const { message, hint } = problemSentence(open.saveProblem);
    return (
      <div className="draw-status" role="alert">
        <span>
          {message} {hint}
        </span>
        <Button onClick={() => session.saveAgain()}>{words.tryAgain}</Button>
      </div>
    );
  }
  return (
    <p className="draw-status quiet" role="status" data-saving={open.saving}>
      {open.reloaded ? `${drawWords.taken} ` : ''}
      {open.saving === 'saving' ? drawWords.saving : drawWords.onDisk}
    </p>
  );
}
