import { useCallback, useState } from 'react';
import { words } from '../../language/words.ts';
import { Button, useEscape } from '../../parts/index.ts';
import { SettingsSheet } from './settings-sheet.tsx';

/** Opens the settings of this machine in place, under the button. */
export function SettingsButton() {
  const [open, setOpen] = useState(false);
  const close = useCallback(() => setOpen(false), []);
  useEscape(open, close);
  return (
    <div className="settings">
      <Button weight="quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
        {words.settings}
      </Button>
      {open ? <SettingsSheet /> : null}
    </div>
  );
}
