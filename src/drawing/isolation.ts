// The closures and drains of a job as a line drawing, with each one's position as shape and word.

import type { Pack } from '../pack/types.ts';
import { ISOLATION_BY_HAND, ISOLATION_NOT_STATED } from '../quantity/authority.ts';
import { now, say } from '../words/heard.ts';
import {
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  g,
  PHONE_WIDTH,
  paragraph,
  path,
  text,
  wrap,
} from './svg.ts';
import { ground, mediumColour } from './theme.ts';
import { closureSymbol, tagAt } from './valve.ts';

type Facts = Pack['facts'];
type Surface = 'screen' | 'paper';

type Device = {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly position: string;
  readonly tags: readonly number[];
  readonly proof: boolean;
};

const CELL = 128;
const SYMBOL = 48;
const LINE = 16.25;

/** The positions the work needs, as listed; the record says which of them are reported. */
export const isolationDrawing = (
  pack: Pick<Pack, 'facts' | 'lists'>,
  options: DrawingOptions = {},
): Drawing => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  if (!pack.facts.isolation.stated) return notStated(width, surface);
  let top = 4;
  const children: Child[] = [];
  for (const [medium, devices] of byMedium(pack.facts, pack.lists)) {
    const band = mediumBand(medium, devices, top, width, surface);
    children.push(...band.children);
    top += band.height;
  }
  children.push(...paragraph(4, top + 14, wrap(ISOLATION_BY_HAND, width - 8, 13), { bold: true }));
  const height = top + 14 + wrap(ISOLATION_BY_HAND, width - 8, 13).length * 16.25;
  return drawing({ x: 0, y: 0, width, height }, altOf(pack), surface, children);
};

/** The same line by line, one drawing a medium, for a sheet that may turn between them. */
export const isolationDrawings = (
  pack: Pick<Pack, 'facts' | 'lists'>,
  options: DrawingOptions = {},
): readonly Drawing[] => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  if (!pack.facts.isolation.stated) return [notStated(width, surface)];
  return [...byMedium(pack.facts, pack.lists)].map(([medium, devices]) => {
    const { children, height } = mediumBand(medium, devices, 0, width, surface);
    const alt = say('isolationOf', medium, devices.map(deviceWords));
    return drawing({ x: 0, y: 0, width, height }, alt, surface, children);
  });
};

const deviceWords = (d: Device): string => say('deviceStands', d.name, d.position, d.proof);

const notStated = (width: number, surface: Surface): Drawing =>
  drawing({ x: 0, y: 0, width, height: 64 }, ISOLATION_NOT_STATED, surface, [
    el('rect', { x: 1, y: 1, width: width - 2, height: 62, 'stroke-width': 2 }),
    text(width / 2, 40, ISOLATION_NOT_STATED, { size: 20, anchor: 'middle', bold: true }),
  ]);

const altOf = (pack: Pick<Pack, 'facts' | 'lists'>): string => {
  const devices = [...byMedium(pack.facts, pack.lists).values()].flat();
  return say('isolationAll', devices.map(deviceWords), ISOLATION_BY_HAND);
};

/** Listed closures first, then drains and the place of proof that are not in the list. */
const byMedium = (facts: Facts, lists: Pack['lists']): ReadonlyMap<string, readonly Device[]> => {
  const listed = new Map(lists.closures.map((row) => [row.closure, row]));
  const proofs = facts.isolation.proveAt;
  const ids = [...new Set([...facts.isolation.closures, ...listed.keys(), ...proofs])];
  const groups = new Map<string, Device[]>();
  for (const id of ids) {
    const closure = facts.closures[id];
    const row = listed.get(id);
    const medium = closure?.medium ?? 'line not stated';
    const device: Device = {
      id,
      name: closure?.name ?? row?.name ?? id,
      kind: closure?.kind ?? 'valve',
      position: row?.position ?? closure?.workPosition ?? 'position not stated',
      tags: row?.tags ?? [],
      proof: proofs.includes(id),
    };
    groups.set(medium, [...(groups.get(medium) ?? []), device]);
  }
  return groups;
};

const mediumBand = (
  medium: string,
  devices: readonly Device[],
  top: number,
  width: number,
  surface: Surface,
): { readonly children: readonly Child[]; readonly height: number } => {
  const perRow = Math.max(1, Math.floor(width / CELL));
  const cell = width / perRow;
  const colour = mediumColour(medium, surface);
  const children: Child[] = [text(4, top + 14, medium, { bold: true })];
  let y = top + 20;
  for (let i = 0; i < devices.length; i += perRow) {
    const row = devices.slice(i, i + perRow);
    const cells = row.map((device) => labelOf(device, cell));
    const line = y + 36;
    if (colour !== null)
      children.push(
        el('path', {
          d: path('M', 2, line, 'L', width - 2, line),
          stroke: colour,
          'stroke-width': 7,
        }),
      );
    children.push(
      el('path', { d: path('M', 2, line, 'L', width - 2, line), 'stroke-width': 1.25 }),
    );
    row.forEach((device, j) => {
      children.push(...deviceAt(device, cells[j] ?? [], cell, (j + 0.5) * cell, line, surface));
    });
    const words = row.map((d, j) => positionLines(d, cell).length + (cells[j]?.length ?? 0));
    y = line + 62 + Math.max(...words) * LINE;
  }
  return { children, height: y - top + 8 };
};

/** The word is bold capitals, which run wider than the guess for plain letters. */
const positionLines = (device: Device, cell: number): readonly string[] =>
  wrap(now(device.position).toUpperCase(), (cell - 12) * 0.8, 13);

const labelOf = (device: Device, cell: number): readonly string[] => [
  ...wrap(device.name, cell - 12, 13),
  ...(device.tags.length > 1 ? wrap(say('tagsAre', device.tags.join(', ')), cell - 12, 13) : []),
  ...(device.proof ? wrap('seen to run and die away', cell - 12, 13) : []),
];

const deviceAt = (
  device: Device,
  lines: readonly string[],
  cell: number,
  x: number,
  line: number,
  surface: Surface,
): readonly Child[] => {
  // A drain or vent is a branch: it leaves the line unbroken.
  const branch = device.kind === 'drain' || device.kind === 'vent';
  const first = device.tags[0];
  const position = positionLines(device, cell);
  return [
    g(
      { 'data-device': device.id },
      branch
        ? null
        : el('rect', {
            x: x - SYMBOL / 2,
            y: line - 5,
            width: SYMBOL,
            height: 10,
            fill: ground(surface),
            stroke: 'none',
          }),
      closureSymbol(device.kind, device.position, x, line, branch ? 34 : SYMBOL, surface),
      first === undefined ? null : tagAt(x + 42, line - 32, String(first), surface),
      ...paragraph(x, line + 66, position, { anchor: 'middle', bold: true }),
      ...paragraph(x, line + 68 + position.length * LINE, lines, { anchor: 'middle' }),
    ),
  ];
};
