import { useEffect, useState } from 'react';
import type { RequestOutput } from '#electron/contract/contract.ts';
import { modelWords, sayFirstShare, sayMeanMinutes } from '../../language/model.ts';
import { hostClient } from '../../session/host.ts';

/** How well finding goes, over all jobs and by model; read when it is opened. */
export function ShopFigures() {
  const [figures, setFigures] = useState<RequestOutput<'shop.figures'> | null>(null);
  useEffect(() => {
    let current = true;
    void hostClient()('shop.figures', {}).then((read) => {
      if (current && read.ok) setFigures(read.value);
    });
    return () => {
      current = false;
    };
  }, []);
  if (!figures) return null;
  return (
    <div className="shop-figures">
      <p>{modelWords.figureLine(figures.overall)}</p>
      <table>
        <caption className="only-read-aloud">{modelWords.figures}</caption>
        <thead>
          <tr>
            <th scope="col">{modelWords.model}</th>
            <th scope="col">{modelWords.minutesToFind}</th>
            <th scope="col">{modelWords.firstOpening}</th>
          </tr>
        </thead>
        <tbody>
          {figures.models.map((model) => (
            <tr key={model.mapId}>
              <th scope="row">{model.mapName}</th>
              <td>{sayMeanMinutes(model)}</td>
              <td>{sayFirstShare(model)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
