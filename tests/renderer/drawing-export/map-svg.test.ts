import { describe, expect, test } from 'vitest';
import { emptyMap } from '#core/map/map-document.ts';
import { escapeXml } from '#renderer/drawing-export/escape-xml.ts';
import { mapSvg } from '#renderer/drawing-export/map-svg.ts';
import { SvgPen } from '#renderer/drawing-export/svg-pen.ts';
import { boardColours } from '#renderer/theme/tokens.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sampleMap } from '#tests/samples/read-sample.ts';

/** The elements of an SVG text; fails where a tag is not closed or an attribute is not quoted. */
function elementsOf(svg: string): readonly string[] {
  const open: string[] = [];
  const seen: string[] = [];
  const left = svg.replaceAll(
    /<(\/?)([a-z]+)((?:\s+[a-zA-Z-]+="[^"<&]*(?:&[a-z]+;[^"<&]*)*")*)\s*(\/?)>/g,
    (_, close: string, name: string, __, alone: string) => {
      if (close) expect(open.pop()).toBe(name);
      else if (!alone) open.push(name);
      if (!close) seen.push(name);
      return '';
    },
  );
  expect(open).toEqual([]);
  expect(left).not.toMatch(/[<>]/);
  return seen;
}

describe('a drawing handed out', () => {
  const map = sampleMap('varnholt-aldine');
  const svg = mapSvg(map, boardColours.day);

  test('is well formed and shows title, names, hatch and a scale bar', () => {
    const elements = elementsOf(svg);
    expect(elements.filter((name) => name === 'pattern')).toHaveLength(2);
    for (const words of ['Varnholt Aldine', 'Boot floor', 'Fuse box', '200 mm']) expect(svg).toContain(words);
    const hatched = svg.match(/fill="url\(#hatch-(up|down)\)"/g) ?? [];
    const drawnPanels = [...map.panels.values()].filter((panel) => panel.area.length >= 3);
    expect(hatched).toHaveLength(drawnPanels.length);
  });

  test('draws each outline as one line and marks every node', () => {
    const graphite = svg.match(new RegExp(`stroke="${boardColours.day.graphite}"`, 'g')) ?? [];
    expect(graphite).toHaveLength(map.outlines.size);
    const without = new Map([...map.nodes].filter(([, node]) => node.kind !== 'splice'));
    const splices = map.nodes.size - without.size;
    const marks = (text: string): number => (text.match(/<path/g) ?? []).length;
    expect(marks(svg)).toBeGreaterThanOrEqual(map.nodes.size + map.outlines.size + splices);
  });

  test('is the same text each time, and never holds what is no number', () => {
    expect(mapSvg(map, boardColours.day)).toBe(svg);
    for (let seed = 1; seed <= 12; seed++) {
      const text = mapSvg(randomMap(seed), boardColours.night);
      elementsOf(text);
      expect(text).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test('of nothing is still a sheet with a title', () => {
    const text = mapSvg(emptyMap('map:none', 'Nothing yet', 'van', 'left'), boardColours.day);
    elementsOf(text);
    expect(text).toContain('Nothing yet');
  });

  test('keeps names from becoming part of the drawing', () => {
    const name = '</title><script>alert("1")</script> & \u0007\ud800';
    const sly = { ...map, details: { ...map.details, name } };
    const text = mapSvg(sly, boardColours.day, { subtitle: "<a href='x'>" });
    expect(elementsOf(text)).not.toContain('script');
    expect(text).toContain('&lt;script&gt;');
    expect(text).not.toContain('\u0007');
    expect(escapeXml('5 < 6 & "so" \u{1F600}\n')).toBe('5 &lt; 6 &amp; &quot;so&quot; \u{1F600}\n');
  });
});

describe('the pen that draws for the painters', () => {
  test('closes a full circle and leaves a part of one open', () => {
    const pen = new SvgPen();
    pen.beginPath();
    pen.arc(10, 10, 5, 0, Math.PI * 2);
    pen.fill();
    expect(pen.drawn).toContain('d="M15 10A5 5 0 0 1 5 10A5 5 0 0 1 15 10Z"');
    pen.beginPath();
    pen.arc(10, 10, 5, 0, Math.PI);
    pen.stroke();
    expect(pen.drawn).toContain('d="M15 10A5 5 0 0 1 10 15A5 5 0 0 1 5 10"');
  });

  test('sets text where the painter says, in its face and size', () => {
    const pen = new SvgPen();
    pen.font = 'italic 13px B612, sans-serif';
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText('Left sill', 100, 50);
    expect(pen.drawn).toContain('font-family="B612, sans-serif" font-size="13" font-style="italic"');
    expect(pen.drawn).toContain('x="100" y="54.55"');
    expect(pen.drawn).toContain('text-anchor="middle"');
  });
});
