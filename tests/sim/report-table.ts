/** Figures and tables of the report. */
export const minutes = (value: number): string => value.toFixed(1);
export const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;
/** Cells of one line, and a whole table, as Markdown. */
const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map((_, i) => (i === 0 ? '---' : '---:'))), ...rows.map(row)].join('\n');

/** Whether an aim was reached. */
export const met = (is: boolean): string => (is ? 'met' : 'missed');
