import type { NodeKind } from '#core/map/kinds.ts';

/** A fixing: a short bar across the loom, broken when it is known to be gone. */
export function ClipMark({
  x,
  y,
  missing,
}: {
  readonly x: number;
  readonly y: number;
  readonly missing: boolean;
}) {
  return (
    <path
      className={missing ? 'straight-clip straight-clip-missing' : 'straight-clip'}
      d={`M${x} ${y - 9}V${y + 9}`}
    />
  );
}

/** A rub spot: a jagged mark whose size follows severity. */
export function RubMark({
  x,
  y,
  severity,
  name,
}: {
  readonly x: number;
  readonly y: number;
  readonly severity: 1 | 2 | 3;
  readonly name: string;
}) {
  const s = 2 + severity * 1.6;
  return (
    <g>
      <title>{name}</title>
      <path
        className="straight-rub"
        d={`M${x - 2 * s} ${y + s}L${x - s} ${y - s}L${x} ${y + s}L${x + s} ${y - s}L${x + 2 * s} ${y + s}`}
      />
    </g>
  );
}

/** A plug, part, splice or branch on the loom, by its own outline. */
export function NodeMark({
  x,
  y,
  kind,
}: {
  readonly x: number;
  readonly y: number;
  readonly kind: NodeKind;
}) {
  if (kind === 'branch' || kind === 'loose-end')
    return <circle className="straight-node" cx={x} cy={y} r={3} />;
  if (kind === 'splice') {
    return <path className="straight-node" d={`M${x - 5} ${y}L${x} ${y - 5}L${x + 5} ${y}L${x} ${y + 5}Z`} />;
  }
  if (kind === 'grommet') return <ellipse className="straight-node" cx={x} cy={y} rx={3.5} ry={9} />;
  if (kind === 'inline-connector') {
    return (
      <path
        className="straight-node"
        d={`M${x - 7} ${y - 7}H${x - 1}V${y + 7}H${x - 7}ZM${x + 1} ${y - 7}H${x + 7}V${y + 7}H${x + 1}Z`}
      />
    );
  }
  if (kind === 'ground-point') {
    return (
      <path
        className="straight-node"
        d={`M${x} ${y - 7}V${y}M${x - 7} ${y}H${x + 7}M${x - 4} ${y + 4}H${x + 4}M${x - 1} ${y + 8}H${x + 1}`}
      />
    );
  }
  return <rect className="straight-node" x={x - 7} y={y - 7} width={14} height={14} />;
}

/** The proved cause: a ringed point. */
export function FoundMark({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <g className="straight-found">
      <circle cx={x} cy={y} r={15} />
      <circle cx={x} cy={y} r={4} className="straight-found-point" />
    </g>
  );
}
