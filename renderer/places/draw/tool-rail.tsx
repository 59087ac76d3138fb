import { drawWords } from '../../language/draw.ts';
import { toolKeys, toolNames } from '../../tools/tool-name.ts';
import { ToolSign } from './tool-sign.tsx';
import type { Drawing } from './use-drawing.ts';

/** The drawing actions in the order in which a new map needs them. */
export function ToolRail({ drawing }: { readonly drawing: Drawing }) {
  return (
    <nav className="tool-rail" aria-label={drawWords.actions}>
      {toolNames.map((name) => (
        <button
          key={name}
          type="button"
          className="tool"
          aria-pressed={drawing.inHand.name === name}
          aria-keyshortcuts={toolKeys[name]}
          data-tool={name}
          onClick={() => drawing.take(name)}
        >
          <ToolSign name={name} />
          <span>{drawWords.tools[name]}</span>
          <span className="tool-key" aria-hidden="true">
            {toolKeys[name]}
          </span>
        </button>
      ))}
    </nav>
  );
}
