import { useState } from 'react';
import type { Panel } from '#core/map/records.ts';
import { orderWords } from '../../../language/order.ts';
import { Button, Disclosure } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { OrderDiagram } from './order-diagram.tsx';
import { orderAround } from './order-picture.ts';
import { OrderSheet } from './order-sheet.tsx';

/** What must be off before a panel and what waits for it, as a small diagram; folded until wanted. */
export function PanelOrder({ panel }: { readonly panel: Panel }) {
  const { map, goTo } = useDraw();
  const [open, setOpen] = useState(false);
  const [sheet, setSheet] = useState(false);
  if (map.panels.size < 2) return null;
  const around = orderAround(map.panels, panel.id);
  return (
    <Disclosure label={orderWords.title} open={open} onToggle={setOpen}>
      <div className="order">
        {around.length > 1 ? (
          <OrderDiagram ids={around} marked={panel.id} onGo={(id) => goTo([id])} />
        ) : (
          <p className="quiet">{orderWords.alone}</p>
        )}
        <Button onClick={() => setSheet(true)}>{orderWords.all}</Button>
      </div>
      {sheet ? <OrderSheet marked={panel.id} onClose={() => setSheet(false)} /> : null}
    </Disclosure>
  );
}

/** Opens the order of all panels of the map. */
export function AllPanelsOrder() {
  const { map } = useDraw();
  const [sheet, setSheet] = useState(false);
  if (map.panels.size < 2) return null;
  return (
    <div>
      <Button onClick={() => setSheet(true)}>{orderWords.all}</Button>
      {sheet ? <OrderSheet onClose={() => setSheet(false)} /> : null}
    </div>
  );
}
