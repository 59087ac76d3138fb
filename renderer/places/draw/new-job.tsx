import type { JobId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { intakeWords } from '../../language/intake.ts';
import { hostClient } from '../../session/host.ts';
import { emptyIntake, IntakeForm } from '../intake/intake-form.tsx';
import { useDraw } from './draw-context.ts';

/** Takes a car in on this map, in place of the board. */
export function NewJob({
  onOpenJob,
  onCancel,
}: {
  readonly onOpenJob: (jobId: JobId) => void;
  readonly onCancel: () => void;
}) {
  const { map, session } = useDraw();
  return (
    <div className="draw-form">
      <IntakeForm
        title={drawWords.openJob}
        sendLabel={intakeWords.start}
        first={emptyIntake}
        circuits={[...map.circuits.values()].sort((a, b) => a.order - b.order)}
        draft={[map.id, 'new job']}
        onCancel={onCancel}
        onSend={async (intake) => {
          // The job keeps the map as it is on disk, so all of it has to be there first.
          await session.flush();
          const made = await hostClient()('job.create', { mapId: map.id, ...intake });
          if (!made.ok) return made.problem;
          onOpenJob(made.value.jobId);
          return null;
        }}
      />
    </div>
  );
}
