import { useEffect } from 'react';
import { compareWords } from '../../language/draw-compare.ts';
import { handoverWords } from '../../language/handover.ts';
import { IconButton, Tabs } from '../../parts/index.ts';
import { hashOf } from '../../place.ts';
import { BringInSteps } from '../handover/bring-in-steps.tsx';
import { HandOutMap } from '../handover/hand-out-map.tsx';
import '../handover/handover.css';
import type { useBringIn } from '../handover/use-bring-in.ts';
import { ComparePage } from './compare/compare-page.tsx';
import { useDraw } from './draw-context.ts';
import './map-task.css';

/** What can be done with the map as a whole, in place of the details. */
export const mapTasks = ['compare', 'hand-out', 'bring-in'] as const;
export type MapTask = (typeof mapTasks)[number];

/** Comparing two states, handing out and bringing in. */
export function MapTaskPage({
  task,
  onTask,
  bringing,
}: {
  readonly task: MapTask;
  readonly onTask: (task: MapTask | null) => void;
  readonly bringing: ReturnType<typeof useBringIn>;
}) {
  const { map, session, lengths } = useDraw();
  const { step } = bringing;
  const taken = step.at === 'stored' && step.mapId === map.id;
  useEffect(() => {
    // The map in sight became another one on disk.
    if (taken) void session.open();
  }, [taken, session]);
  return (
    <section className="map-task" aria-label={compareWords.tasks}>
      <IconButton
        label={compareWords.back}
        sign="close"
        className="map-task-close"
        onClick={() => onTask(null)}
      />
      <Tabs
        label={compareWords.tasks}
        shown={task}
        onShow={onTask}
        pages={[
          { key: 'compare', label: compareWords.title, content: <ComparePage /> },
          {
            key: 'hand-out',
            label: handoverWords.handOut.title,
            content: <HandOutMap map={map} lengths={lengths} flush={() => session.flush()} />,
          },
          {
            key: 'bring-in',
            label: handoverWords.bringIn.title,
            content: (
              <div className="handover">
                <p className="quiet">{handoverWords.bringIn.lead}</p>
                <BringInSteps
                  bringing={bringing}
                  onOpenMap={(mapId) => {
                    window.location.hash = hashOf({ at: 'draw', mapId });
                  }}
                />
              </div>
            ),
          },
        ]}
      />
    </section>
  );
}
