import { drawWords } from '../../language/draw.ts';
import { type ToolName, toolNames } from '../../tools/tool-name.ts';
import { ToolSign } from './tool-sign.tsx';
import type { Drawing } from './use-drawing.ts';

/** The drawing actions in the order in which a new map needs them. */
export function ToolRail({ drawing }: { readonly drawing: Drawing }) {
  return (
    <nav className="tool-rail" aria-label={drawWords.actions}>
      {toolNames.map((name: ToolName, index) => (
        <button
          key={name}
          type="button"
          className="tool"
          aria-pressed={drawing.inHand.name === name}
          aria-keyshortcuts={String(index + 1)}
          data-tool={name}
          onClick={() => drawing.take(name)}
        >
          <ToolSign name={name} />
          <span>{drawWords.tools[name]}</span>
          <span className="tool-key" aria-hidden="true">
            {index + 1}
          </span>
        </button>
      ))}
    </nav>
  );
}
