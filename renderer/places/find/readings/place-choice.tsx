import { nameOf } from '../../../language/name-of.ts';
import { readingWords } from '../../../language/readings.ts';
import { whereLine } from '../../../language/say-where.ts';
import { Select } from '../../../parts/index.ts';
import type { Piece } from '../../../straight/straight-picture.ts';
import { useFind } from '../find-context.ts';

const words = readingWords.form;
const atNodeMm = 1;

/** What was moved: between two places of the circuit, or the stretch picked on the map. */
export function PlaceChoice({
  from: fromLabel,
  to: toLabel,
  pieces,
  onChange,
}: {
  readonly from: string;
  readonly to: string;
  readonly pieces: readonly Piece[];
  readonly onChange: (pieces: readonly Piece[]) => void;
}) {
  const { open, say, where } = useFind();
  const { line, map } = open;
  if (!line) return null;
  const first = pieces[0];
  const last = pieces.at(-1);
  const nodes = line.nodes.map(({ nodeId, stationMm }, index) => ({
    value: String(index),
    label: say(nameOf(map, nodeId)),
    stationMm,
  }));
  const at = (stationMm: number | undefined): string =>
    stationMm === undefined
      ? ''
      : (nodes.find((node) => Math.abs(node.stationMm - stationMm) < atNodeMm)?.value ?? '');
  const joined = pieces.length === 1;
  const from = joined ? at(first?.fromMm) : '';
  const to = joined ? at(last?.toMm) : '';
  const choose = (fromMm: number, toMm: number): void =>
    onChange([{ fromMm: Math.min(fromMm, toMm), toMm: Math.max(fromMm, toMm) }]);
  const stationOf = (value: string): number | undefined => nodes[Number(value)]?.stationMm;
  const options = (chosen: string): { value: string; label: string }[] =>
    chosen === '' ? [{ value: '', label: '…' }, ...nodes] : nodes;
  return (
    <>
      <Select
        label={fromLabel}
        value={from}
        options={options(from)}
        onChange={(value) => {
          const start = stationOf(value);
          if (start === undefined) return;
          const end = last && last.toMm > start ? last.toMm : (nodes[Number(value) + 1]?.stationMm ?? 0);
          choose(start, end);
        }}
      />
      <Select
        label={toLabel}
        value={to}
        options={options(to)}
        onChange={(value) => {
          const end = stationOf(value);
          if (end === undefined) return;
          const start =
            first && first.fromMm < end ? first.fromMm : (nodes[Number(value) - 1]?.stationMm ?? 0);
          choose(start, end);
        }}
      />
      {pieces.length > 0 && (from === '' || to === '') ? (
        <p className="reading-place quiet">
          {words.placeSet(pieces.map((piece) => whereLine(where(piece))).join('; '))}
        </p>
      ) : null}
    </>
  );
}
