import type { MachineSettings } from '../session/machine-settings.ts';
import type { Camera } from './camera.ts';

const mmPerInch = 25.4;

/** A ruler's round length for the present zoom: 1, 2 or 5 times a power of ten, about 120 px long. */
export function scaleBarLength(
  pxPerMm: number,
  lengths: MachineSettings['lengths'],
): { readonly widthPx: number; readonly value: string; readonly unit: string } {
  const pxPerUnit = lengths === 'metric' ? pxPerMm : pxPerMm * mmPerInch;
  const wanted = 140 / pxPerUnit;
  const power = 10 ** Math.floor(Math.log10(wanted));
  const round = ([5, 2, 1].find((step) => step * power <= wanted) ?? 1) * power;
  const widthPx = round * pxPerUnit;
  if (lengths === 'imperial') return { widthPx, value: String(round), unit: 'in' };
  if (round >= 1000) return { widthPx, value: String(round / 1000), unit: 'm' };
  return { widthPx, value: String(round), unit: 'mm' };
}

/** The scale of the drawing as a bar of known length. */
export function ScaleBar({
  camera,
  lengths,
}: {
  readonly camera: Camera;
  readonly lengths: MachineSettings['lengths'];
}) {
  const { widthPx, value, unit } = scaleBarLength(camera.pxPerMm, lengths);
  return (
    <div className="scale-bar" aria-hidden="true">
      <span className="figure">
        {value} <span className="unit">{unit}</span>
      </span>
      <span className="scale-bar-rule" style={{ width: `${widthPx}px` }} />
    </div>
  );
}
