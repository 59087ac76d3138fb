import type { Summary } from './summary.ts';

const width = 640;
const barHeight = 22;
const left = 250;

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** Mean minutes of each way of searching as bars, and stated against held regions below. */
export function picture({ plan, rules, knowing, covered, trials }: Summary, caption: string): string {
  const bars = [
    { name: 'the plan', value: plan.minutes, fill: '#1d4f73' },
    ...rules.map(({ rule, minutes }) => ({ name: rule, value: minutes, fill: '#9a9a92' })),
    { name: 'knowing the true chances', value: knowing.minutes, fill: '#d6d6cf' },
  ];
  const longest = Math.max(...bars.map(({ value }) => value));
  const scale = (width - left - 60) / longest;
  const lines = bars.map(({ name, value, fill }, i) => {
    const y = 40 + i * (barHeight + 8);
    return `<text x="${left - 8}" y="${y + 15}" text-anchor="end">${escaped(name)}</text>
<rect x="${left}" y="${y}" width="${(value * scale).toFixed(1)}" height="${barHeight}" fill="${fill}"/>
<text x="${(left + value * scale + 6).toFixed(1)}" y="${y + 15}">${value.toFixed(1)}</text>`;
  });
  const top = 70 + bars.length * (barHeight + 8);
  const regions = covered.map(({ share, found }, i) => {
    const y = top + 20 + i * (barHeight + 8);
    const full = width - left - 60;
    return `<text x="${left - 8}" y="${y + 15}" text-anchor="end">said to hold ${Math.round(share * 100)} %</text>
<rect x="${left}" y="${y}" width="${(found * full).toFixed(1)}" height="${barHeight}" fill="#1d4f73"/>
<line x1="${(left + share * full).toFixed(1)}" x2="${(left + share * full).toFixed(1)}" y1="${y - 3}" y2="${y + barHeight + 3}" stroke="#000" stroke-width="2"/>
<text x="${(left + Math.max(found, share) * full + 6).toFixed(1)}" y="${y + 15}">${(found * 100).toFixed(1)} %</text>`;
  });
  const height = top + 30 + covered.length * (barHeight + 8);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="13">
<rect width="${width}" height="${height}" fill="#fff"/>
<text x="12" y="22">Mean minutes until the fault is seen, ${trials} invented cars (${escaped(caption)})</text>
${lines.join('\n')}
<text x="12" y="${top}">Faults inside the stated regions</text>
${regions.join('\n')}
</svg>
`;
}
