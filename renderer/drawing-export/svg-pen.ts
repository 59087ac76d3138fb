import { escapeXml } from './escape-xml.ts';

/** How wide a text is set, in px; without a browser an average of the letters has to do. */
export type TextMeasure = (text: string, sizePx: number) => number;

/** Widths of letters of a plain sans face as shares of its size: narrow, wide, capital and other; from memory. */
const letterShares: readonly (readonly [RegExp, number])[] = [
  [/[iljtfrI.,:;'|()[\] ]/, 0.3],
  [/[mwMW@%]/, 0.86],
  [/[A-Z]/, 0.68],
];
const otherShare = 0.55;

/** How wide a text may be set, where there is no browser to ask. */
export const guessedTextWidth: TextMeasure = (text, sizePx) =>
  [...text].reduce((sum, letter) => {
    const share = letterShares.find(([letters]) => letters.test(letter))?.[1] ?? otherShare;
    return sum + share * sizePx;
  }, 0);

/** To a hundredth of a pixel: finer cannot be seen, and the file stays small. */
const px = (value: number): string => String(Math.round(value * 100) / 100 + 0);

/** The part of a canvas context the board's painters draw with. */
type Drawn = Pick<
  CanvasRenderingContext2D,
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'closePath'
  | 'arc'
  | 'rect'
  | 'stroke'
  | 'fill'
  | 'fillRect'
  | 'strokeRect'
  | 'fillText'
  | 'setLineDash'
  | 'strokeStyle'
  | 'fillStyle'
  | 'lineWidth'
  | 'lineJoin'
  | 'lineCap'
  | 'globalAlpha'
  | 'font'
  | 'textAlign'
  | 'textBaseline'
> & { measureText(text: string): { readonly width: number } };

/**
 * Takes down what a painter draws as SVG elements, so that a drawing handed out carries the board's own
 * marks. It knows what the painters of the ground use: straight lines, arcs, boxes, text, dashes and one
 * level of opacity.
 */
export class SvgPen implements Drawn {
  strokeStyle: string | CanvasGradient | CanvasPattern = '#000';
  fillStyle: string | CanvasGradient | CanvasPattern = '#000';
  lineWidth = 1;
  lineJoin: CanvasLineJoin = 'miter';
  lineCap: CanvasLineCap = 'butt';
  globalAlpha = 1;
  font = '10px sans-serif';
  textAlign: CanvasTextAlign = 'start';
  textBaseline: CanvasTextBaseline = 'alphabetic';
  private readonly elements: string[] = [];
  private readonly measure: TextMeasure;
  private path = '';
  private dash: readonly number[] = [];

  constructor(measure: TextMeasure = guessedTextWidth) {
    this.measure = measure;
  }

  /** Everything drawn so far, in drawing order. */
  get drawn(): string {
    return this.elements.join('\n');
  }

  /** This pen as the painters know one. */
  get context(): CanvasRenderingContext2D {
    return this as unknown as CanvasRenderingContext2D;
  }

  beginPath(): void {
    this.path = '';
  }

  moveTo(x: number, y: number): void {
    this.path += `M${px(x)} ${px(y)}`;
  }

  lineTo(x: number, y: number): void {
    this.path += `${this.path === '' ? 'M' : 'L'}${px(x)} ${px(y)}`;
  }

  closePath(): void {
    this.path += 'Z';
  }

  arc(x: number, y: number, radius: number, start: number, end: number): void {
    const at = (angle: number): string =>
      `${px(x + radius * Math.cos(angle))} ${px(y + radius * Math.sin(angle))}`;
    const turn = Math.min(2 * Math.PI, Math.abs(end - start)) * Math.sign(end - start);
    const sweep = turn > 0 ? 1 : 0;
    const r = px(radius);
    // In halves: an arc that ends where it began would be none.
    const begin = this.path === '' || this.path.endsWith('Z') ? 'M' : 'L';
    const half = (to: number): string => `A${r} ${r} 0 0 ${sweep} ${at(to)}`;
    this.path += `${begin}${at(start)}${half(start + turn / 2)}${half(start + turn)}`;
    if (Math.abs(turn) >= 2 * Math.PI) this.path += 'Z';
  }

  rect(x: number, y: number, width: number, height: number): void {
    this.path += `M${px(x)} ${px(y)}h${px(width)}v${px(height)}h${px(-width)}Z`;
  }

  stroke(): void {
    if (this.path === '') return;
    this.put(`<path d="${this.path}" fill="none" ${this.strokeLook()}/>`);
  }

  fill(): void {
    if (this.path === '') return;
    this.put(`<path d="${this.path}" ${this.fillLook()}/>`);
  }

  fillRect(x: number, y: number, width: number, height: number): void {
    this.put(`<rect ${box(x, y, width, height)} ${this.fillLook()}/>`);
  }

  strokeRect(x: number, y: number, width: number, height: number): void {
    this.put(`<rect ${box(x, y, width, height)} fill="none" ${this.strokeLook()}/>`);
  }

  fillText(text: string, x: number, y: number): void {
    const { italic, bold, sizePx, family } = this.face();
    const look = [
      `font-family="${escapeXml(family)}" font-size="${px(sizePx)}"`,
      italic ? 'font-style="italic"' : '',
      bold ? 'font-weight="bold"' : '',
      `text-anchor="${anchors[this.textAlign]}"`,
      this.fillLook(),
    ];
    // Programs differ in what they know of baselines: the letters are lowered by hand instead.
    const lower = this.textBaseline === 'middle' ? sizePx * 0.35 : 0;
    const words = look.filter(Boolean).join(' ');
    this.put(`<text x="${px(x)}" y="${px(y + lower)}" ${words}>${escapeXml(text)}</text>`);
  }

  measureText(text: string): { readonly width: number } {
    return { width: this.measure(text, this.face().sizePx) };
  }

  setLineDash(dash: Iterable<number>): void {
    this.dash = [...dash];
  }

  /** Adds an element as it stands. */
  put(element: string): void {
    this.elements.push(element);
  }

  private strokeLook(): string {
    const dash = this.dash.length > 0 ? ` stroke-dasharray="${this.dash.map(px).join(' ')}"` : '';
    const look = `stroke="${escapeXml(String(this.strokeStyle))}" stroke-width="${px(this.lineWidth)}"`;
    return `${look} stroke-linejoin="${this.lineJoin}" stroke-linecap="${this.lineCap}"${dash}${this.opacity()}`;
  }

  private fillLook(): string {
    return `fill="${escapeXml(String(this.fillStyle))}"${this.opacity()}`;
  }

  private opacity(): string {
    return this.globalAlpha < 1 ? ` opacity="${px(this.globalAlpha)}"` : '';
  }

  private face(): { italic: boolean; bold: boolean; sizePx: number; family: string } {
    const [, words = '', size = '10', family = 'sans-serif'] =
      /^(.*?)([\d.]+)px(?:\/\S+)?\s+(.*)$/.exec(this.font) ?? [];
    const bold = /bold|[6-9]00/.test(words);
    return { italic: words.includes('italic'), bold, sizePx: Number(size), family };
  }
}

const anchors: Readonly<Record<CanvasTextAlign, string>> = {
  left: 'start',
  start: 'start',
  center: 'middle',
  right: 'end',
  end: 'end',
};

const box = (x: number, y: number, width: number, height: number): string =>
  `x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}"`;
