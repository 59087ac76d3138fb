import type { ToolName } from '../../tools/tool-name.ts';

/** Our own small drawing for each drawing action, on a 24 unit square. */
const drawings: Readonly<Record<ToolName, string>> = {
  select: 'M4 4h6M4 4v6M20 20h-6m6 0v-6M9 9h6v6H9z',
  outline: 'M4 9c3-5 13-5 16 0v6c-3 5-13 5-16 0z',
  scale: 'M3 15h18M3 11v8M21 11v8M8 13v4m4-4v4m4-4v4',
  route: 'M3 19h5c4 0 3-7 7-7h6M15 12c2 0 2-6 6-6',
  node: 'M3 12h5m8 0h5M9 6v12M15 6v12',
  clip: 'M3 14h18M12 6v12M8 6h8',
  'rub-spot': 'M3 18l4-9 3 6 3-10 3 8 2-4 3 9',
  panel: 'M4 5h16v14H4zM4 12l7-7M4 19 18 5M11 19l9-9',
  underlay: 'M4 5h16v14H4zM4 16l5-5 4 4 3-3 4 4M15 9h.1',
  beside: 'M3 8h7c4 0 4 3 11 3M3 14h6c4 0 5 4 12 4M5 11v0m4 0v0m4 1v0',
  paint: 'M3 12h18M6 8h9v8H6zM18 8v8',
  trace: 'M5 19a2 2 0 1 0 0-.1M19 5a2 2 0 1 0 0 .1M6 17C8 9 16 15 18 7',
};

export function ToolSign({ name }: { readonly name: ToolName }) {
  return (
    <svg
      className="sign"
      width={24}
      height={24}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d={drawings[name]} />
    </svg>
  );
}
