import { useId, useState } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import { closeWords } from '../../language/close.ts';
import { Button, Choice, Field, NumberField, ProblemNotice } from '../../parts/index.ts';
import { changeShop, useShop } from '../../session/shop-settings.ts';
import { keepPhoto } from '../close/keep-photo.ts';

const words = closeWords.shop;

/** The workshop's name, rate, paper and logo, for bills and reports. */
export function ShopFields() {
  const shop = useShop();
  const logoId = useId();
  const [problem, setProblem] = useState<Problem | null>(null);
  const setLogo = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const kept = await keepPhoto(file, false, {});
    setProblem(kept.ok ? null : kept.problem);
    if (kept.ok) changeShop({ logoSha256: kept.value.sha256 });
  };
  return (
    <fieldset className="shop-fields">
      <legend>{words.title}</legend>
      <Field label={words.name} value={shop.name} maxLength={120} onChange={(name) => changeShop({ name })} />
      <Field
        label={words.address}
        value={shop.address}
        maxLength={300}
        onChange={(address) => changeShop({ address })}
      />
      <Field
        label={words.currency}
        value={shop.currency}
        maxLength={6}
        onChange={(currency) => changeShop({ currency })}
      />
      <NumberField
        label={words.rate}
        value={shop.hourlyRate}
        unit={words.perHour}
        min={0.01}
        max={100_000}
        onChange={(hourlyRate) => changeShop({ hourlyRate })}
      />
      <Choice
        label={words.paper}
        value={shop.paper}
        options={(['a4', 'letter'] as const).map((value) => ({ value, label: words.papers[value] }))}
        onChange={(paper) => changeShop({ paper })}
      />
      <div className="button-row">
        <label className="button" htmlFor={logoId}>
          {words.setLogo}
        </label>
        <input
          id={logoId}
          className="only-read-aloud"
          type="file"
          accept="image/*"
          onChange={(event) => void setLogo(event.target.files?.[0])}
        />
        {shop.logoSha256 ? (
          <Button onClick={() => changeShop({ logoSha256: null })}>{words.noLogo}</Button>
        ) : null}
      </div>
      {problem ? <ProblemNotice problem={problem} /> : null}
    </fieldset>
  );
}
