import { severalWords } from '../../language/draw-several.ts';
import { NumberField, type NumberFieldProps } from '../../parts/index.ts';

/** A figure of the map: within the drawing's bounds, and there unless said otherwise. */
export function FigureField({
  differs = false,
  ...rest
}: Omit<NumberFieldProps, 'placeholder' | 'disabled'> & {
  /** Several things with figures of their own: empty until one is typed for all of them. */
  readonly differs?: boolean;
}) {
  return (
    <NumberField
      min={-50_000}
      max={50_000}
      places={1}
      mayBeEmpty={false}
      {...(differs ? { placeholder: severalWords.differs } : {})}
      {...rest}
    />
  );
}
