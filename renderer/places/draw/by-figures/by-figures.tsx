import { type ComponentType, useState } from 'react';
import { figureWords } from '../../../language/by-figures.ts';
import { Disclosure, Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { optionsOf } from '../options-of.ts';
import { AddOutlineForm, AddPanelForm, AddRubSpotForm } from './add-area-forms.tsx';
import { AddClipForm } from './add-clip-form.tsx';
import { AddNodeForm } from './add-node-form.tsx';
import { AddRunForm } from './add-run-form.tsx';
import { bodyFrame } from './body-frame.ts';
import './by-figures.css';
import { MoveForm } from './move-form.tsx';
import { TagForm } from './tag-form.tsx';

const forms = {
  node: AddNodeForm,
  run: AddRunForm,
  clip: AddClipForm,
  panel: AddPanelForm,
  'rub-spot': AddRubSpotForm,
  outline: AddOutlineForm,
  tag: TagForm,
  move: MoveForm,
} as const satisfies Record<keyof typeof figureWords.tasks, ComponentType>;
const tasks = Object.keys(forms) as readonly (keyof typeof forms)[];

/** Everything the board can do with a pointer, by typed figures: for the keyboard and for reading aloud. */
export function ByFigures() {
  const { map } = useDraw();
  const [open, setOpen] = useState(false);
  const [task, setTask] = useState<keyof typeof forms>('node');
  /** A form once shown stays, so that what was typed into it is there on coming back. */
  const [shown, setShown] = useState<readonly (keyof typeof forms)[]>(['node']);
  const { frontXMm, byShell } = bodyFrame(map);
  return (
    <Disclosure label={figureWords.title} open={open} onToggle={setOpen}>
      <div className="by-figures">
        <Select
          label={figureWords.task}
          value={task}
          options={optionsOf(tasks, figureWords.tasks)}
          onChange={(next) => {
            setTask(next);
            if (!shown.includes(next)) setShown([...shown, next]);
          }}
        />
        {task === 'move' || task === 'tag' || task === 'clip' ? null : (
          <p className="field-hint">{figureWords.frame(frontXMm, byShell)}</p>
        )}
        {shown.map((each) => {
          const Form = forms[each];
          return (
            <div key={each} hidden={each !== task}>
              <Form />
            </div>
          );
        })}
      </div>
    </Disclosure>
  );
}
