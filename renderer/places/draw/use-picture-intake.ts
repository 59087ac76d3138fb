import { useCallback, useMemo, useRef, useState } from 'react';
import type { PlanPoint } from '#core/geometry/place.ts';
import { addUnderlay } from '#core/map/commands/add-underlay.ts';
import type { Underlay } from '#core/map/records.ts';
import { newId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { hostClient } from '../../session/host.ts';
import type { MapSession } from '../../session/map-session.ts';
import { scalePicture } from '../../session/scale-picture.ts';
import { nextOrder } from '../../tools/free-name.ts';
import { base64Of } from './picture-bytes.ts';

/** A picture on its way under the drawing. */
export interface PictureWork {
  readonly name: string;
  /** 0 to 1 while it is read and scaled; null while it is being kept, which takes as long as it takes. */
  readonly share: number | null;
}

/** The part of the plan a new picture should fill, in mm. */
export interface Frame {
  readonly middle: PlanPoint;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Brings pictures in: scales them, has their bytes kept, and lays them in the middle of what is in view. */
export function usePictureIntake(
  session: MapSession,
  frameNow: () => Frame,
  onProblem: (problem: Problem | null) => void,
  onLaid: () => void,
) {
  const [work, setWork] = useState<PictureWork | null>(null);
  const stopper = useRef<AbortController | null>(null);
  const latest = useRef({ frameNow, onProblem, onLaid });
  latest.current = { frameNow, onProblem, onLaid };
  const stop = useCallback(() => stopper.current?.abort(), []);
  const bringIn = useCallback(
    async (file: File): Promise<void> => {
      stop();
      const control = new AbortController();
      stopper.current = control;
      latest.current.onProblem(null);
      const show = (share: number | null): void => {
        if (stopper.current === control) setWork({ name: file.name, share });
      };
      const finish = (problem: Problem | null): void => {
        if (stopper.current !== control) return;
        stopper.current = null;
        setWork(null);
        if (problem?.code !== 'stopped') latest.current.onProblem(problem);
      };
      show(0);
      const scaled = await scalePicture(file, { onProgress: show, signal: control.signal });
      if (!scaled.ok) return finish(scaled.problem);
      show(null);
      const { bytes, widthPx, heightPx } = scaled.value;
      const base64 = await base64Of(bytes as Uint8Array<ArrayBuffer>);
      const kept = await hostClient()('picture.keep', { base64 });
      if (!kept.ok) return finish(kept.problem);
      if (control.signal.aborted) return finish({ code: 'stopped' });
      const state = session.store.getState();
      if (state.phase !== 'open') return finish(null);
      const underlay: Underlay = {
        id: newId('underlay', Math.random),
        name: file.name.replace(/\.[^.]+$/, '').slice(0, 120),
        imageSha256: kept.value.sha256,
        mediaType: kept.value.mediaType,
        widthPx,
        heightPx,
        ...placeIn(latest.current.frameNow(), widthPx, heightPx),
        turnRad: 0,
        opacity: 0.6,
        hidden: false,
        order: nextOrder(state.document.underlays.values()),
      };
      const refused = session.edit(addUnderlay(state.document, { underlay }), {
        label: 'edit.addUnderlay',
        select: [underlay.id],
      });
      finish(refused);
      if (!refused) latest.current.onLaid();
    },
    [session, stop],
  );
  return useMemo(() => ({ work, bringIn, stop }), [work, bringIn, stop]);
}
export type PictureIntake = ReturnType<typeof usePictureIntake>;

/** As large as fits into the frame, in its middle. */
function placeIn(
  { middle, widthMm, heightMm }: Frame,
  widthPx: number,
  heightPx: number,
): Pick<Underlay, 'origin' | 'mmPerPx'> {
  const mmPerPx = Math.min(widthMm / widthPx, heightMm / heightPx);
  return {
    mmPerPx,
    origin: {
      xMm: middle.xMm - (widthPx * mmPerPx) / 2,
      yMm: middle.yMm + (heightPx * mmPerPx) / 2,
    },
  };
}
