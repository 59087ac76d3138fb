import { useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';
import type { PanelId } from '#core/quantity/id.ts';
import { orderWords } from '../../../language/order.ts';
import { IconButton } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { OrderDiagram } from './order-diagram.tsx';

/** The order of all panels over the whole window. Escape or the cross closes it. */
export function OrderSheet({
  marked = null,
  onClose,
}: {
  readonly marked?: PanelId | null;
  readonly onClose: () => void;
}) {
  const { map, goTo } = useDraw();
  const sheet = useRef<HTMLElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    sheet.current?.querySelector('button')?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  const closing = useRef(onClose);
  closing.current = onClose;
  // With nothing in the sheet in focus, Escape would reach the board under it.
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      const inside = event.target instanceof Node && sheet.current?.contains(event.target);
      if (event.key !== 'Escape' || inside) return;
      event.stopPropagation();
      closing.current();
    };
    document.addEventListener('keydown', listen, true);
    return () => document.removeEventListener('keydown', listen, true);
  }, []);
  const panels = [...map.panels.values()];
  const arrows = panels.reduce((sum, panel) => sum + panel.offFirst.length, 0);
  const go = (id: PanelId): void => {
    onClose();
    goTo([id]);
  };
  return createPortal(
    <section
      ref={sheet}
      className="order-sheet"
      aria-label={orderWords.allTitle}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      <header>
        <h2>
          {orderWords.allTitle} <span className="quiet">{orderWords.steps(panels.length, arrows)}</span>
        </h2>
        <IconButton label={orderWords.close} sign="close" onClick={onClose} />
      </header>
      <OrderDiagram ids={panels.map(({ id }) => id)} marked={marked} onGo={go} />
    </section>,
    document.body,
  );
}
