/** A figure and its unit, the unit in the lighter weight. */
export function Figure({
  value,
  unit,
  large = false,
}: {
  readonly value: string;
  readonly unit: string;
  readonly large?: boolean;
}) {
  return (
    <span className={large ? 'figure figure-large' : 'figure'}>
      {value}
      {unit ? (
        <>
          {' '}
          <span className="unit">{unit}</span>
        </>
      ) : null}
    </span>
  );
}
