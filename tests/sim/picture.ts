import type { BodyStyle } from '#core/map/kinds.ts';
import type { MeteredSummary } from './metered-summary.ts';
import type { Share, Summary } from './summary.ts';

const width = 720;
const barHeight = 22;
const lineHeight = barHeight + 8;
const left = 290;
const right = 70;

const ours = '#1d4f73';
const others = '#9a9a92';
const ideal = '#d6d6cf';

interface Bar {
  readonly name: string;
  readonly value: number;
  readonly fill: string;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** Mean minutes of each way of searching without a meter, and stated against held regions below. */
export function picture({ plan, rules, knowing, covered, trials }: Summary, caption: string): string {
  const bars = [
    { name: 'the plan', value: plan.minutes, fill: ours },
    ...rules.map(({ rule, minutes }) => ({ name: rule, value: minutes, fill: others })),
    { name: 'knowing the true chances', value: knowing.minutes, fill: ideal },
  ];
  return drawn(
    `Mean minutes until the fault is seen, ${trials} cars without a meter`,
    caption,
    bars,
    covered,
  );
}

/** The same for the search with a meter. */
export function meteredPicture(summary: MeteredSummary, caption: string): string {
  const bars = [
    { name: 'the tool, tests and order', value: summary.tool.minutes, fill: ours },
    { name: 'the tool, order only', value: summary.toolWithoutMeter.minutes, fill: ours },
    ...summary.rules.map(({ rule, minutes }) => ({ name: rule, value: minutes, fill: others })),
    { name: 'a meter without the tool', value: summary.byProportion.minutes, fill: others },
    { name: 'straight to the fault', value: summary.atOnce.minutes, fill: ideal },
  ];
  const title = `Mean minutes until the fault is seen, ${summary.trials} cars with a meter`;
  return drawn(title, caption, bars, summary.covered);
}

/** The tool beside the best simple order, body by body. */
export function bodyPicture(
  byShape: readonly { readonly shape: BodyStyle; readonly summary: MeteredSummary }[],
  caption: string,
): string {
  const bars = byShape.flatMap(({ shape, summary: { tool, bestRule } }) => [
    { name: `${shape}: the tool`, value: tool.minutes, fill: ours },
    { name: bestRule.rule, value: bestRule.minutes, fill: others },
  ]);
  return drawn('Mean minutes until the fault is seen, by body', caption, bars, []);
}

function drawn(title: string, caption: string, bars: readonly Bar[], covered: readonly Share[]): string {
  const full = width - left - right;
  const scale = full / Math.max(...bars.map(({ value }) => value));
  const lines = bars.map(({ name, value, fill }, i) =>
    barLine(60 + i * lineHeight, name, value * scale, fill, value.toFixed(1)),
  );
  const top = 90 + bars.length * lineHeight;
  const regions = covered.map(({ share, found }, i) => {
    const y = top + 20 + i * lineHeight;
    const at = (left + share * full).toFixed(1);
    const name = `said to hold ${Math.round(share * 100)} %`;
    return `${barLine(y, name, found * full, ours, `${(found * 100).toFixed(1)} %`, Math.max(found, share) * full)}
<line x1="${at}" x2="${at}" y1="${y - 3}" y2="${y + barHeight + 3}" stroke="#000" stroke-width="2"/>`;
  });
  const heading = covered.length > 0 ? `<text x="12" y="${top}">Faults inside the stated regions</text>` : '';
  const height = top + (covered.length > 0 ? 30 + covered.length * lineHeight : -20);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="13">
<rect width="${width}" height="${height}" fill="#fff"/>
<text x="12" y="22" font-size="15">${escaped(title)}</text>
<text x="12" y="42" fill="#555">${escaped(caption)}</text>
${lines.join('\n')}
${heading}
${regions.join('\n')}
</svg>
`;
}

function barLine(
  y: number,
  name: string,
  length: number,
  fill: string,
  figure: string,
  textAt = length,
): string {
  return `<text x="${left - 8}" y="${y + 15}" text-anchor="end">${escaped(name)}</text>
<rect x="${left}" y="${y}" width="${length.toFixed(1)}" height="${barHeight}" fill="${fill}"/>
<text x="${(left + textAt + 6).toFixed(1)}" y="${y + 15}">${figure}</text>`;
}
