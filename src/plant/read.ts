// Reads a plant folder's texts into the plant and its machines, and tells every problem at once.

import { limits } from '../limits.ts';
import { hashOf } from '../quantity/sha.ts';
import { type Fault, inReadingOrder, must, type Place, toldOnce } from './faults.ts';
import { type Doc, type Docs, sortOut } from './kinds.ts';
import { type Around, bareTypeProblems, makeMachine } from './machine.ts';
import type { MachineFile, PlantFile, TypeFile } from './schema.ts';
import {
  clashProblems,
  forJointProblems,
  forProblems,
  jointTwiceProblems,
  type Sheet,
  sheetProblems,
} from './sheets.ts';
import { slugOf } from './slug.ts';
import { didYouMean } from './suggest.ts';
import type { FileProblem, Machine, Plant, PlantText, ReadPlant } from './types.ts';
import { isRawMap, readYaml } from './yaml.ts';

/** The plant of these files, or null when anything in them must be put right first. */
export function readPlant(files: PlantText): ReadPlant {
  const tooBig = boundProblems(files);
  if (tooBig.length > 0) return { plant: null, problems: tooBig };
  const ordered = [...files].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
  const docs = sortOut(ordered.map(({ file, text }) => readYaml(file, text)));
  const plantDoc = docs.plants[0];
  const sheets = docs.sheets.flatMap(({ data, at, raw }): Sheet[] => {
    if (data.value === null) return [];
    const known = isRawMap(raw.values) ? Object.keys(raw.values) : [];
    return [{ sheet: data.value, at, known }];
  });
  const unread = docs.unread.length > 0;
  const doubtful = doubtfulValues(docs);
  const around: Around = { plant: plantDoc, sheets, doubtful, unread };
  const { machines, problems } = machinesOf(docs, around);
  const all = [
    ...docs.problems,
    ...onePlant(docs),
    ...problems,
    ...sheets.flatMap(sheetProblems),
    ...sheets.flatMap(jointTwiceProblems),
    ...clashProblems(sheets),
    ...(unread ? [] : forProblems(sheets, namesOf(docs))),
    ...(unread ? [] : forJointProblems(sheets, (id) => jointsFor(id, docs, machines))),
    ...(unread ? [] : sidesProblems(docs.machines)),
    ...alikeProblems(docs.machines),
  ];
  const told = inReadingOrder(toldOnce(all)).slice(0, limits.plant.problems);
  const refused = told.some(({ level }) => level === 'must');
  const plantFile = plantDoc?.data.value;
  if (refused || plantFile === null || plantFile === undefined) {
    return { plant: null, problems: told };
  }
  const issued = sheets.map(({ sheet, at }) => ({ ...sheet, file: at('sheet').file }));
  return { plant: { ...plantOf(plantFile, machines, docs.types), sheets: issued }, problems: told };
}

function boundProblems(files: PlantText): FileProblem[] {
  const place = (file: string) => ({ file, line: 1, path: '' });
  if (files.length > limits.plant.files) {
    const expected = `at most ${limits.plant.files} files`;
    const why = 'there are too many files to read';
    return [must('F4', place(files[0]?.file ?? ''), { got: files.length, expected, why })];
  }
  return files
    .filter(({ text }) => text.length > limits.plant.fileBytes)
    .map(({ file, text }) => {
      const expected = `at most ${limits.plant.fileBytes} characters`;
      return must('F4', place(file), { got: text.length, expected, why: 'it is too large' });
    });
}

/** The joints, and their fasteners, that a sheet for `id` may name; null where nothing has `id`. */
function jointsFor(
  id: string,
  { plants, types }: Docs,
  machines: Readonly<Record<string, Machine>>,
): ReadonlySet<string> | null {
  const whole = plants.some(({ raw }) => raw.plant === id);
  const of = Object.values(machines).filter((m) => whole || m.type === id || m.id === id);
  const bare = types.filter(({ raw }) => whole || raw.type === id);
  const texts = bare.flatMap(({ raw }) => (isRawMap(raw.joints) ? Object.keys(raw.joints) : []));
  const held = [...of.map((m) => m.joints), ...bare.map(({ data }) => data.value?.joints ?? {})];
  const names = held.flatMap((joints) =>
    Object.entries(joints).flatMap(([joint, { fasteners }]) => [
      joint,
      ...Object.keys(fasteners ?? {}).map((fastener) => `${joint}:${fastener}`),
    ]),
  );
  return of.length + bare.length === 0 ? null : new Set([...texts, ...names]);
}

/** Values of sheets that can't be used are known to exist all the same. */
function doubtfulValues(docs: Docs): string[] {
  const names = namesOf(docs);
  return docs.sheets
    .filter(({ data }) => data.value === null || !names.has(data.value.for))
    .flatMap(({ raw }) => (isRawMap(raw.values) ? Object.keys(raw.values) : []));
}

function onePlant({ plants, unread }: Docs): FileProblem[] {
  const [first, ...more] = plants;
  if (first === undefined) {
    if (unread.length > 0) return [];
    const place = { file: 'plant.yaml', line: 1, path: 'plant' };
    const expected = 'one file with the keys plant, name, kind and issue';
    return [must('F8', place, { got: null, expected, why: 'no file describes the whole plant' })];
  }
  return more.map((other) =>
    again('F2', other.at('plant'), other.data.value?.plant, first.at('plant'), 'plant file'),
  );
}

function again(fault: Fault, place: Place, got: unknown, first: Place, what: string): FileProblem {
  const why = `${first.file}:${first.line} has it already`;
  return must(fault, place, { got, expected: `one ${what}`, why });
}

/** Ids under which a type or a machine stands, and repeats of them. */
function byId<T>(
  docs: readonly Doc<T>[],
  field: 'type' | 'machine',
): { held: Map<string, Doc<T>>; problems: FileProblem[] } {
  const held = new Map<string, Doc<T>>();
  const problems: FileProblem[] = [];
  for (const doc of docs) {
    const id = doc.raw[field];
    if (typeof id !== 'string') continue;
    const first = held.get(id);
    if (first === undefined) held.set(id, doc);
    else problems.push(again('F2', doc.at(field), id, first.at(field), `${field} ${id}`));
  }
  return { held, problems };
}

function machinesOf(docs: Docs, around: Around) {
  const types = byId(docs.types, 'type');
  const positions = byId(docs.machines, 'machine');
  const problems = [...types.problems, ...positions.problems];
  const machines: Record<string, Machine> = {};
  const used = new Set<string>();
  for (const doc of positions.held.values()) {
    const position = doc.data.value;
    if (position === null) continue;
    used.add(position.type);
    const type = types.held.get(position.type);
    if (type === undefined) {
      if (around.unread) continue;
      problems.push(
        must('F9', doc.at('type'), {
          got: position.type,
          expected: 'the id of a type',
          why: `there is no type ${position.type}`,
          remedy: didYouMean(position.type, types.held.keys()),
        }),
      );
      continue;
    }
    const made = makeMachine(doc, position, type, around);
    problems.push(...made.problems);
    if (made.machine !== null) machines[made.machine.id] = made.machine;
  }
  for (const [id, type] of types.held) {
    if (!used.has(id)) problems.push(...bareTypeProblems(type, around));
  }
  return { machines, problems };
}

const namesOf = ({ plants, types, machines }: Docs): Set<string> =>
  new Set(
    [
      ...plants.map(({ raw }) => raw.plant),
      ...types.map(({ raw }) => raw.type),
      ...machines.map(({ raw }) => raw.machine),
    ].filter((id) => typeof id === 'string'),
  );

/** The other side must be there, be of the same type, and name this one back. */
function sidesProblems(docs: readonly Doc<MachineFile>[]): FileProblem[] {
  const files = docs.flatMap(({ data, at }) =>
    data.value === null ? [] : [{ position: data.value, at }],
  );
  const ids = new Set(docs.map(({ raw }) => String(raw.machine)));
  return files.flatMap(({ position, at }): FileProblem[] => {
    const { machine, otherSide: got } = position;
    if (got === undefined) return [];
    const place = at('otherSide');
    if (got === machine || !ids.has(got)) {
      const why = got === machine ? 'a machine is not its own other side' : `no machine is ${got}`;
      const others = [...ids].filter((id) => id !== machine);
      const expected = 'the id of another machine';
      return [must('F9', place, { got, expected, why, remedy: didYouMean(got, others) })];
    }
    const other = files.find((one) => one.position.machine === got);
    if (other === undefined || other.position.otherSide === machine) return [];
    const back = other.position.otherSide;
    if (back !== undefined && !ids.has(back)) return [];
    const theirs = other.position.otherSide ?? 'none';
    const why = `${got} names ${theirs} as its other side, not ${machine}`;
    return [must('F20', place, { got, expected: 'two machines that name each other', why })];
  });
}

/** Two machines that a command or a look at the plate could not tell apart. */
function alikeProblems(docs: readonly Doc<MachineFile>[]): FileProblem[] {
  const problems: FileProblem[] = [];
  const names = new Map<string, Place>();
  const plates = new Map<string, Place>();
  for (const { data, at } of docs) {
    if (data.value === null) continue;
    const { name, plate } = data.value;
    const slug = slugOf(name);
    const before = names.get(slug);
    if (before === undefined) names.set(slug, at('name'));
    else problems.push(again('F20', at('name'), name, before, `machine called ${slug}`));
    if (plate === undefined) continue;
    const same = plates.get(plate);
    if (same === undefined) plates.set(plate, at('plate'));
    else problems.push(again('F20', at('plate'), plate, same, `machine with plate ${plate}`));
  }
  return problems;
}

function plantOf(
  file: PlantFile,
  machines: Readonly<Record<string, Machine>>,
  types: readonly Doc<TypeFile>[],
): Omit<Plant, 'sheets'> {
  const { plant: id, name, kind, issue, source, storageRule } = file;
  const content = {
    id,
    name,
    kind,
    ...(source === undefined ? {} : { source }),
    ...(storageRule === undefined ? {} : { storageRule }),
    people: file.people ?? [],
    places: file.places ?? {},
    machines,
    types: Object.fromEntries(
      types.flatMap(({ data }) => (data.value === null ? [] : [[data.value.type, data.value]])),
    ),
  };
  return { ...content, issue: { ...issue, hash: hashOf({ ...content, issue }) } };
}
