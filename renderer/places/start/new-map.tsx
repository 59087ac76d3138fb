import { useState } from 'react';
import { type BodyStyle, bodyStyles, type DriveSide } from '#core/map/kinds.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { startWords } from '../../language/start.ts';
import { bodyStyleWords, driveSideWords, words } from '../../language/words.ts';
import { Button, Choice, Field, ProblemNotice, Select, useEscape } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';

/** Name, body style and side of drive of a new map; opens it for drawing. */
export function NewMap({
  onMade,
  onCancel,
}: {
  readonly onMade: (mapId: MapId) => void;
  readonly onCancel: () => void;
}) {
  const [name, setName] = useState('');
  const [bodyStyle, setBodyStyle] = useState<BodyStyle>('hatch');
  const [driveSide, setDriveSide] = useState<DriveSide>('right');
  const [problem, setProblem] = useState<Problem | null>(null);
  useEscape(true, onCancel);
  const make = async (): Promise<void> => {
    const made = await hostClient()('map.create', { name: name.trim(), bodyStyle, driveSide });
    if (made.ok) onMade(made.value.mapId);
    else setProblem(made.problem);
  };
  return (
    <form
      className="card-form"
      aria-label={startWords.newMap.title}
      onSubmit={(event) => {
        event.preventDefault();
        void make();
      }}
    >
      <h3>{startWords.newMap.title}</h3>
      <Field
        label={startWords.newMap.name}
        hint={startWords.newMap.nameHint}
        value={name}
        maxLength={120}
        required
        onChange={setName}
      />
      <div className="intake-row">
        <Select
          label={startWords.newMap.body}
          value={bodyStyle}
          options={bodyStyles.map((value) => ({ value, label: bodyStyleWords[value] }))}
          onChange={setBodyStyle}
        />
        <Choice
          label={startWords.newMap.side}
          value={driveSide}
          options={[
            { value: 'right', label: driveSideWords.right },
            { value: 'left', label: driveSideWords.left },
          ]}
          onChange={setDriveSide}
        />
      </div>
      {problem ? <ProblemNotice problem={problem} /> : null}
      <div className="button-row">
        <Button type="submit" weight="main" disabled={name.trim() === ''}>
          {startWords.newMap.make}
        </Button>
        <Button onClick={onCancel}>{words.cancel}</Button>
      </div>
    </form>
  );
}
