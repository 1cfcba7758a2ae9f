/**
 * A context that keeps what is drawn on it as shapes of an SVG: the drawings of the screen, in lines as fine as the printer has.
 * It knows what those drawings use and no more; a test draws them all.
 */
import type { Box } from '../charts/place-labels.ts';

export interface Shape {
  d: string;
  fill: string;
  stroke: string;
  width: number;
  dash: string;
  opacity: number;
  clip: Box | null;
}

type State = Pick<SvgContext, 'fillStyle' | 'strokeStyle' | 'lineWidth' | 'globalAlpha'> & {
  dash: readonly number[];
  clip: Box | null;
};

const round = (value: number): string => String(Number(value.toFixed(2)));

export class SvgContext {
  fillStyle = '#000';
  strokeStyle = '#000';
  lineWidth = 1;
  lineJoin = 'round';
  globalAlpha = 1;
  shapes: Shape[] = [];
  #d = '';
  #dash: readonly number[] = [];
  #clip: Box | null = null;
  #box: Box | null = null;
  #saved: State[] = [];

  /** As the functions that draw take it. */
  get asContext(): CanvasRenderingContext2D {
    return this as unknown as CanvasRenderingContext2D;
  }

  beginPath(): void {
    this.#d = '';
    this.#box = null;
  }
  moveTo(x: number, y: number): void {
    this.#d += `M${round(x)} ${round(y)}`;
  }
  lineTo(x: number, y: number): void {
    this.#d += `${this.#d ? 'L' : 'M'}${round(x)} ${round(y)}`;
  }
  closePath(): void {
    this.#d += 'Z';
  }
  rect(left: number, top: number, width: number, height: number): void {
    this.#box = { left, top, width, height };
    this.#d += `M${round(left)} ${round(top)}h${round(width)}v${round(height)}h${round(-width)}Z`;
  }
  /** Whole circles only. */
  arc(x: number, y: number, radius: number): void {
    const [r, across] = [round(radius), round(2 * radius)];
    this.#d += `M${round(x - radius)} ${round(y)}a${r} ${r} 0 1 0 ${across} 0a${r} ${r} 0 1 0 -${across} 0Z`;
  }

  fill(): void {
    this.#add({ fill: this.fillStyle, stroke: 'none' });
  }
  stroke(): void {
    this.#add({ fill: 'none', stroke: this.strokeStyle });
  }
  fillRect(left: number, top: number, width: number, height: number): void {
    this.beginPath();
    this.rect(left, top, width, height);
    this.fill();
  }
  strokeRect(left: number, top: number, width: number, height: number): void {
    this.beginPath();
    this.rect(left, top, width, height);
    this.stroke();
  }
  setLineDash(dash: readonly number[]): void {
    this.#dash = dash;
  }

  /** To the rectangle of the path under way, within what it was cut to before. */
  clip(): void {
    const [box, outer] = [this.#box, this.#clip];
    this.#clip = box && outer ? overlap(box, outer) : box;
  }
  save(): void {
    const { fillStyle, strokeStyle, lineWidth, globalAlpha } = this;
    const state = { fillStyle, strokeStyle, lineWidth, globalAlpha, dash: this.#dash, clip: this.#clip };
    this.#saved.push(state);
  }
  restore(): void {
    const state = this.#saved.pop();
    if (!state) return;
    const { dash, clip, ...pen } = state;
    Object.assign(this, pen);
    this.#dash = dash;
    this.#clip = clip;
  }

  #add(paint: Pick<Shape, 'fill' | 'stroke'>): void {
    if (!this.#d) return;
    this.shapes.push({
      ...paint,
      d: this.#d,
      width: this.lineWidth,
      dash: this.#dash.join(' '),
      opacity: this.globalAlpha,
      clip: this.#clip,
    });
  }
}

function overlap(a: Box, b: Box): Box {
  const left = Math.max(a.left, b.left);
  const top = Math.max(a.top, b.top);
  const width = Math.min(a.left + a.width, b.left + b.width) - left;
  const height = Math.min(a.top + a.height, b.top + b.height) - top;
  return { left, top, width: Math.max(0, width), height: Math.max(0, height) };
}
