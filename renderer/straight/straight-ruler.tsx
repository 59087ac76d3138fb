import { tapeUnits } from '../language/say-length.ts';
import { rulerMarks } from './likelihood-curve.ts';
import { placeLabels } from './place-labels.ts';
import type { StraightRows } from './straight-rows.ts';
import type { StraightViewProps } from './straight-view-props.ts';

/** Names of plugs and parts above, and the ruler in the tape's unit below. */
export function StraightRuler({
  picture,
  lengths,
  say,
  rows,
  innerPx,
}: StraightViewProps & { readonly rows: StraightRows; readonly innerPx: number }) {
  const pxPerMm = innerPx / picture.lengthMm;
  const tape = tapeUnits[lengths];
  const unitMm = tape.mm;
  const marks = rulerMarks(picture.lengthMm / unitMm, Math.max(4, innerPx / 110));
  const last = picture.nodes.length - 1;
  const labels = placeLabels(
    picture.nodes.map((node, index) => ({
      key: `${node.nodeId} ${index}`,
      text: say(node.name),
      xPx: node.stationMm * pxPerMm,
      precedence: index === 0 || index === last ? 0 : node.kind === 'branch' ? 2 : 1,
    })),
    innerPx,
    2,
  );
  const named = new Map(labels.map((label) => [label.key, label]));
  return (
    <>
      {picture.nodes.map((node, index) => {
        const key = `${node.nodeId} ${index}`;
        const label = named.get(key);
        const x = node.stationMm * pxPerMm;
        return (
          <g key={key}>
            {label ? (
              <>
                <line
                  className="straight-leader"
                  x1={x}
                  x2={x}
                  y1={(label.row + 1) * rows.nameRowPx + 1}
                  y2={rows.loomY}
                />
                <text className="straight-name" x={label.xPx} y={(label.row + 1) * rows.nameRowPx - 4}>
                  {label.text}
                </text>
              </>
            ) : null}
          </g>
        );
      })}
      <line className="straight-rule" x1={0} x2={innerPx} y1={rows.rulerTop} y2={rows.rulerTop} />
      {marks.map((mark, index) => {
        const x = mark * unitMm * pxPerMm;
        const anchor = index === 0 ? 'start' : x > innerPx - 30 ? 'end' : 'middle';
        return (
          <g key={mark}>
            <line className="straight-rule" x1={x} x2={x} y1={rows.rulerTop} y2={rows.rulerTop + 7} />
            <text className="straight-mark" x={x} y={rows.rulerTop + 22} textAnchor={anchor}>
              {Number(mark.toFixed(2))}
              <tspan className="straight-unit"> {tape.unit}</tspan>
            </text>
          </g>
        );
      })}
    </>
  );
}
