import type { NextTest } from '#core/job/next-test.ts';
import type { Probe } from '#core/job/reading.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { type FormGround, firstForm, type ReadingForm, type ReadingTest } from './reading-form.ts';

/** The forms a proposed test fills in, one for each figure it gives; only what it showed is left to type. */
export function formsOfTest(test: NextTest, ground: FormGround): readonly ReadingForm[] {
  const [first, second] = test.nodeIds;
  const state = { ...test.state, apartNodeIds: [...test.state.apartNodeIds] };
  const form = (kind: ReadingTest, changes: Partial<ReadingForm>): ReadingForm => ({
    ...firstForm(kind, ground),
    figure: '',
    state,
    ...changes,
  });
  const body: Probe = { on: 'body' };
  const amps = test.injection?.way === 'limited-supply' ? String(test.injection.amps) : '';
  /** The lead at one of the test's places, on the half of a parted plug that it means. */
  const lead = (nodeId: NodeId): Probe => wire(nodeId, test.sides[test.nodeIds.indexOf(nodeId)]);
  const drop = (driven: NodeId, sensed: NodeId): ReadingForm =>
    form('drop', { from: lead(driven), to: lead(sensed), current: amps });
  const eachEnd = (kind: 'ohms' | 'capacitance'): readonly ReadingForm[] =>
    test.nodeIds.map((nodeId) => form(kind, { from: lead(nodeId), to: body }));
  const { other } = test;
  const between = (kind: 'ohms' | 'beep'): readonly ReadingForm[] =>
    test.nodeIds.flatMap((nodeId, i) => {
      const otherId = other?.nodeIds[i];
      if (!other || !otherId) return [];
      const to = { ...wire(otherId, other.sides[i]), circuitId: other.circuitId };
      return [form(kind, { from: lead(nodeId), to })];
    });
  switch (test.kind) {
    case 'unplug':
      return [form('symptom', { yes: null })];
    case 'drop':
    case 'lamp-for-fuse':
      return first && second ? [drop(first, second)] : [];
    case 'drop-both-ends':
      return first && second ? [drop(first, second), drop(second, first)] : [];
    case 'ohms-both-ends':
      return eachEnd('ohms');
    case 'capacitance':
      return eachEnd('capacitance');
    case 'beep':
      return first ? [form('beep', { from: wire(first), to: second ? wire(second) : body })] : [];
    case 'beep-between':
      return between('beep').slice(0, 1);
    case 'ohms-to-body':
      return eachEnd('ohms');
    case 'ohms-through':
      return first && second ? [form('ohms', { from: lead(first), to: lead(second) })] : [];
    case 'ohms-between':
    case 'ohms-between-at-plug':
      return between('ohms');
    case 'drop-between':
      return first && second ? [drop(first, second)] : [];
    case 'move':
      return [form('move', { pieces: test.ranges })];
  }
}

const wire = (nodeId: NodeId, side?: NextTest['sides'][number]): Extract<Probe, { on: 'wire' }> =>
  side ? { on: 'wire', nodeId, side } : { on: 'wire', nodeId };
