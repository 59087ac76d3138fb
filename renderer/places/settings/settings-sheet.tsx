import { words } from '../../language/words.ts';
import { Choice } from '../../parts/index.ts';
import { changeSettings, useMachineSettings } from '../../session/machine-settings.ts';
import { LicencesFold } from '../licences/licences-fold.tsx';
import { DataFile } from './data-file.tsx';
import { ShopFields } from './shop-fields.tsx';
import './settings.css';

const optionsOf = <T extends string>(labels: Readonly<Record<T, string>>) =>
  (Object.entries(labels) as [T, string][]).map(([value, label]) => ({ value, label }));

/** What is set once for this machine: light, lengths and how sides are said. */
export function SettingsSheet() {
  const settings = useMachineSettings((each) => each);
  return (
    <section className="settings-sheet" aria-label={words.settings}>
      <Choice
        label={words.theme}
        value={settings.theme}
        options={optionsOf(words.themes)}
        onChange={(theme) => changeSettings({ theme })}
      />
      <Choice
        label={words.lengths}
        value={settings.lengths}
        options={optionsOf(words.lengthSystems)}
        onChange={(lengths) => changeSettings({ lengths })}
      />
      <Choice
        label={words.sides}
        value={settings.sides}
        options={optionsOf(words.sideWords)}
        onChange={(sides) => changeSettings({ sides })}
      />
      <ShopFields />
      <DataFile />
      <LicencesFold />
    </section>
  );
}
