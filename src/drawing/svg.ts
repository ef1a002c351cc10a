// A small safe SVG builder: elements are data, and every text and attribute is escaped on writing.

import { now, say } from '../words/heard.ts';

export type Attr = string | number | null | undefined;
export type Attrs = Readonly<Record<string, Attr>>;
export type El = {
  readonly name: string;
  readonly attrs: Attrs;
  readonly children: readonly Child[];
};
export type Child = El | string | null;

export type ViewBox = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** A finished drawing: the SVG text, its box, and the words a person who can't see it hears. */
export type Drawing = { readonly svg: string; readonly viewBox: ViewBox; readonly alt: string };

/** Where a drawing goes: the screen's variables follow the palette, paper is ink on white. */
export type Surface = 'screen' | 'paper';

export type DrawingOptions = {
  readonly surface?: Surface;
  /** Width in viewBox units; one unit is one CSS px on a phone, one point on paper. */
  readonly width?: number;
};

export const PHONE_WIDTH = 390;
/** No text in any drawing is smaller than this, in viewBox units. */
export const MIN_TEXT = 13;
/** The shortest hit target, in viewBox units. */
export const HIT = 44;

export const el = (name: string, attrs: Attrs = {}, ...children: readonly Child[]): El => ({
  name,
  attrs,
  children,
});

export const g = (attrs: Attrs, ...children: readonly Child[]): El => el('g', attrs, ...children);

/** Characters that XML 1.0 forbids even when escaped. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to be taken out
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

export const escapeText = (text: string): string =>
  text
    .toWellFormed()
    .replace(FORBIDDEN, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');

/** Two decimals are finer than a hairline and keep snapshots the same on every machine. */
const figure = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error(`a drawing holds a figure that is ${value}`);
  return String(Math.round(value * 100) / 100 + 0);
};

const NAME = /^[a-zA-Z][a-zA-Z0-9:-]*$/;

export const write = (node: El): string => {
  if (!NAME.test(node.name)) throw new Error(`element name "${node.name}" is not a plain name`);
  const attrs = Object.entries(node.attrs)
    .filter(([, value]) => value !== null && value !== undefined)
    .map(([name, value]) => {
      if (!NAME.test(name)) throw new Error(`attribute name "${name}" is not a plain name`);
      return ` ${name}="${typeof value === 'number' ? figure(value) : escapeText(String(value))}"`;
    })
    .join('');
  const inner = node.children
    .map((child) =>
      child === null ? '' : typeof child === 'string' ? escapeText(child) : write(child),
    )
    .join('');
  return inner === '' ? `<${node.name}${attrs}/>` : `<${node.name}${attrs}>${inner}</${node.name}>`;
};

/** Closes a drawing: one root, one title, ink in the current colour, hairlines by default. */
export const drawing = (
  box: ViewBox,
  alt: string,
  surface: Surface,
  children: readonly Child[],
): Drawing => {
  if (!(box.width > 0 && box.height > 0)) throw new Error('a drawing needs a positive box');
  const root = el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: [box.x, box.y, box.width, box.height].map(figure).join(' '),
      width: surface === 'paper' ? box.width : '100%',
      height: surface === 'paper' ? box.height : null,
      role: 'img',
      color: surface === 'paper' ? '#000' : null,
      'font-family': surface === 'paper' ? 'DejaVu Sans' : 'inherit',
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 1,
      'stroke-linecap': 'round',
      'stroke-linejoin': 'round',
    },
    el('title', {}, alt),
    ...children,
  );
  return { svg: write(root), viewBox: box, alt };
};

export type TextStyle = {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly extra?: Attrs;
};

/** One line of text; a size below the stated least is a broken drawing, not a matter of taste. */
export const text = (x: number, y: number, words: string, style: TextStyle = {}): El => {
  const content = now(words);
  const size = style.size ?? MIN_TEXT;
  if (size < MIN_TEXT) throw new Error(`text "${content}" at ${size} (least ${MIN_TEXT})`);
  return el(
    'text',
    {
      x,
      y,
      'font-size': size,
      'text-anchor': style.anchor ?? 'start',
      'font-weight': style.bold === true ? 700 : null,
      fill: 'currentColor',
      stroke: 'none',
      ...style.extra,
    },
    content,
  );
};

/** A generous guess of a text's width, for there is no font to ask here. */
export const widthOf = (content: string, size: number): number => content.length * size * 0.6;

/** Breaks at spaces, and inside a word only where the word alone is too long. */
export const wrap = (content: string, width: number, size: number): readonly string[] => {
  const most = Math.max(3, Math.floor(width / (size * 0.6)));
  const lines: string[] = [];
  let line = '';
  for (const word of now(content)
    .split(/\s+/)
    .filter((part) => part !== '')) {
    let rest = word;
    while (rest.length > most) {
      if (line !== '') lines.push(line);
      line = '';
      lines.push(`${rest.slice(0, most - 1)}-`);
      rest = rest.slice(most - 1);
    }
    const joined = line === '' ? rest : `${line} ${rest}`;
    if (joined.length > most) {
      lines.push(line);
      line = rest;
    } else line = joined;
  }
  if (line !== '') lines.push(line);
  return lines;
};

/** Several lines under one another; `y` is the base line of the first. */
export const paragraph = (
  x: number,
  y: number,
  lines: readonly string[],
  style: TextStyle = {},
): readonly El[] =>
  lines.map((line, index) => text(x, y + index * (style.size ?? MIN_TEXT) * 1.25, line, style));

export const ordinal = (n: number): string => say('ordinal', n);

/** An open arrow head whose point is at (x, y), pointing along `angle` (radians). */
export const arrowHead = (x: number, y: number, angle: number, size = 8): El => {
  const wing = (turn: number): string =>
    `${figure(x - size * Math.cos(angle + turn))} ${figure(y - size * Math.sin(angle + turn))}`;
  return el('path', { d: `M ${wing(0.45)} L ${figure(x)} ${figure(y)} L ${wing(-0.45)}` });
};

export const path = (...parts: readonly (string | number)[]): string =>
  parts.map((part) => (typeof part === 'number' ? figure(part) : part)).join(' ');
