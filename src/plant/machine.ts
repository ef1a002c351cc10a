// Makes one machine at its fitted position: type, differences, the plant's lines, values in force.

import { must, note, type Place, should } from './faults.ts';
import { freeableProblems } from './freeable.ts';
import type { Doc } from './kinds.ts';
import { type Content, type Kind, referenceProblems, type Subject } from './references.ts';
import { type Laid, placing, resolve } from './resolve.ts';
import { type MachineFile, type PlantFile, type TypeFile, typeFileSchema } from './schema.ts';
import { senseProblems } from './sense.ts';
import { shape } from './shape.ts';
import { type Sheet, valuesFor } from './sheets.ts';
import { slugOf } from './slug.ts';
import { nearest } from './suggest.ts';
import { saidTwice, tightenedBy, untoldByHand, untoldRetightening } from './tightened.ts';
import type { FileProblem, Machine } from './types.ts';
import { isWrapped } from './walk.ts';
import { isRawMap, type RawMap } from './yaml.ts';

export type Around = {
  readonly plant: Doc<PlantFile> | undefined;
  readonly sheets: readonly Sheet[];
  /** Value ids of sheets that misfit or are for nobody known: told once, not at each use. */
  readonly doubtful: readonly string[];
  /** Some file could not be read, so a name missing here may stand there. */
  readonly unread: boolean;
};

export type Made = {
  readonly machine: Machine | null;
  readonly laid: readonly Laid[];
  readonly problems: readonly FileProblem[];
};

function contentOf(type: TypeFile, plant: PlantFile | null | undefined): Content {
  return {
    parts: type.parts,
    joints: type.joints,
    lines: { ...plant?.lines, ...type.lines },
    closures: { ...plant?.closures, ...type.closures },
    sensors: type.sensors ?? {},
    isolations: type.isolations ?? {},
    targets: type.targets ?? {},
  };
}

function idsIn(raw: RawMap | undefined, section: string): string[] {
  const held = raw?.[section];
  const map = isWrapped(held) ? held.value : held;
  return isRawMap(map) ? Object.keys(map) : [];
}

function knownIn(
  raw: RawMap,
  plant: RawMap | undefined,
  values: readonly string[],
): Record<Kind, Set<string>> {
  return {
    part: new Set(idsIn(raw, 'parts')),
    joint: new Set(idsIn(raw, 'joints')),
    line: new Set([...idsIn(raw, 'lines'), ...idsIn(plant, 'lines')]),
    closure: new Set([...idsIn(raw, 'closures'), ...idsIn(plant, 'closures')]),
    sensor: new Set(idsIn(raw, 'sensors')),
    isolation: new Set(idsIn(raw, 'isolations')),
    value: new Set(values),
  };
}

type Bare = { id: string; raw: RawMap; laid: readonly Laid[]; for: readonly string[] };

/** Everything that can be wrong with one machine, or with a type that no machine has. */
function judged(
  { id, raw, laid, for: ids }: Bare,
  content: Content,
  at: (path: string) => Place,
  around: Around,
  mended: boolean,
) {
  const inForce = valuesFor(around.sheets, ids);
  // A sheet that misfits still says which values there are.
  const named = around.sheets
    .filter(({ sheet }) => ids.includes(sheet.for))
    .flatMap(({ known }) => known ?? []);
  const known = knownIn(raw, around.plant?.raw, [
    ...Object.keys(inForce.values),
    ...named,
    ...around.doubtful,
  ]);
  for (const gone of inForce.withdrawn.keys()) {
    if (!Object.hasOwn(inForce.values, gone)) known.value.delete(gone);
  }
  const subject: Subject = { id, content, known, withdrawn: inForce.withdrawn, laid, at, mended };
  const shared: readonly Kind[] = ['value', 'line', 'closure'];
  const references = referenceProblems(subject, around.unread ? shared : []);
  const unsure =
    mended || around.plant?.data.mended === true || references.some(({ fault }) => fault === 'F9');
  const sure = { ...subject, mended: unsure };
  const problems = [
    ...inForce.problems,
    ...references,
    ...senseProblems(sure),
    ...freeableProblems(sure),
    ...saidTwice(content.joints, inForce.values, around.sheets),
    ...untoldByHand(tightenedBy(content.joints, inForce.values), at),
    ...untoldRetightening(content.joints, inForce.values, at),
    ...shadowProblems(subject, around),
    ...placeRemarks(subject, around),
  ];
  return { values: inForce.values, problems };
}

/** A line or closure of the type under an id the plant has too: nobody could say which is meant. */
function shadowProblems({ content, at }: Subject, { plant }: Around): FileProblem[] {
  return (['lines', 'closures'] as const).flatMap((section) =>
    idsIn(plant?.raw, section).flatMap((id) => {
      const own = content[section][id];
      const shared = plant?.data.value?.[section]?.[id];
      if (own === undefined || own === shared) return [];
      const place = plant?.at(`${section}/${id}`);
      const why = `${id} stands in ${place?.file}:${place?.line} already`;
      const expected = 'an id that is not used for the whole plant';
      return [must('F2', at(`${section}/${id}`), { got: id, expected, why })];
    }),
  );
}

/** Places are free text; one that nearly is a place of the plant was probably meant as that. */
function placeRemarks({ content, at }: Subject, { plant }: Around): FileProblem[] {
  const places = Object.keys(plant?.data.value?.places ?? {});
  const look = (path: string, got: string | undefined): FileProblem[] => {
    if (got === undefined || places.includes(got)) return [];
    const [near] = nearest(got, places);
    if (near === undefined) return [];
    const why = `it is not among the places of the plant`;
    return [should(at(path), { got, expected: near, why, remedy: `did you mean ${near}?` })];
  };
  const closures = Object.entries(content.closures).flatMap(([id, { place }]) =>
    look(`closures/${id}/place`, place),
  );
  const accesses = Object.entries(content.joints).flatMap(([id, joint]) =>
    Object.entries(joint.accesses ?? {}).flatMap(([access, { place }]) =>
      look(`joints/${id}/accesses/${access}/place`, place),
    ),
  );
  return [...closures, ...accesses];
}

/** Places of a path: what the plant file gave points there, all else to the type or position. */
function withPlant(at: (path: string) => Place, own: RawMap, { plant }: Around) {
  return (path: string): Place => {
    const [section = '', id = ''] = path.split('/');
    if (section !== 'lines' && section !== 'closures') return at(path);
    const shared = !idsIn(own, section).includes(id) && idsIn(plant?.raw, section).includes(id);
    return shared && plant !== undefined ? plant.at(path) : at(path);
  };
}

export function makeMachine(
  doc: Doc<MachineFile>,
  position: MachineFile,
  type: Doc<TypeFile>,
  around: Around,
): Made {
  const differences = position.differences ?? [];
  // A difference's content is taken as it stands in the file, unknowns and origins included.
  const { raw, laid, problems } = resolve(type.raw, differences, doc.file);
  const shaped = shape(raw, typeFileSchema, placing(type.file, doc.file, laid));
  const all = [...problems, ...shaped.problems];
  if (shaped.value === null) return { machine: null, laid, problems: all };
  const at = placing(type.file, doc.file, laid)(shaped.taken);
  const content = contentOf(shaped.value, around.plant?.data.value);
  const plantId = around.plant?.data.value?.plant ?? '';
  const bare = { id: position.machine, raw, laid, for: [plantId, position.type, position.machine] };
  const files = [type.file, doc.file].flatMap((file) => file.problems);
  const twice = files.some(({ level }) => level === 'must');
  const mended = shaped.mended || problems.length > 0 || twice;
  const { values, problems: found } = judged(
    bare,
    content,
    withPlant(at, raw, around),
    around,
    mended,
  );
  const { machine: id, name, otherSide, plate, side } = position;
  const machine: Machine = {
    id,
    name,
    slug: slugOf(name),
    type: position.type,
    typeName: shaped.value.name,
    ...(otherSide === undefined ? {} : { otherSide }),
    ...(side === undefined ? {} : { side }),
    ...(plate === undefined ? {} : { plate }),
    ...(position.position === undefined ? {} : { position: position.position }),
    ...content,
    joints: tightenedBy(content.joints, values),
    differences,
    values,
    origins: shaped.taken.origins,
    unknown: shaped.taken.unknown,
  };
  return { machine, laid, problems: [...all, ...found] };
}

/** A type that no machine has is judged by itself, since nothing else would read it. */
export function bareTypeProblems(type: Doc<TypeFile>, around: Around): FileProblem[] {
  const { value, mended } = type.data;
  if (value === null) return [];
  const content = contentOf(value, around.plant?.data.value);
  const ids = [around.plant?.data.value?.plant ?? '', value.type];
  const bare = { id: value.type, raw: type.raw, laid: [], for: ids };
  const { problems } = judged(bare, content, withPlant(type.at, type.raw, around), around, mended);
  const unused = note(type.at('type'), {
    got: value.type,
    expected: 'a machine of this type',
    why: 'no machine has it',
  });
  return [...problems, unused];
}
