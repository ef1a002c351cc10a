// The proof sheet: what must be seen dry and still, at which speed, and the verdict by name; blank
// to take along, or with the readings and verdicts as they were said.

import type { Pack, ShownValue } from '../pack/types.ts';
import { paperWords } from '../record/from-paper.ts';
import type { Act, JobState } from '../record/types.ts';
import { inLanguage, now, say } from '../words/heard.ts';
import type { Language } from '../words/words.ts';
import { cautionView, titleBlock } from './block.ts';
import { timeWords } from './record-pdf.ts';
import { valueView } from './steps.ts';
import { setPdf } from './typst.ts';

/** Of a job that has begun: what was said of its proof up to now. */
export type ProofSaid = { readonly job: JobState; readonly acts: readonly Act[] };

export const proofPdf = (
  pack: Pack,
  said: ProofSaid | null = null,
  language: Language = 'en',
): Uint8Array => setPdf('proof', proofView(pack, said, language));

export const proofView = (pack: Pack, said: ProofSaid | null = null, language: Language = 'en') =>
  inLanguage(language, [...(pack.said ?? []), ...(said?.job.said ?? [])], () =>
    viewOf(pack, said, language),
  );

const viewOf = (pack: Pack, said: ProofSaid | null, language: Language) => {
  const cautions = pack.steps
    .filter((step) => step.phase === 'prove' || step.phase === 'line-up')
    .flatMap((step) => step.cautions);
  const byHazard = new Map(cautions.map((caution) => [caution.hazard, caution]));
  const joints = new Set(
    pack.steps.filter((step) => step.verb === 'made').map((step) => step.thing.slice(6)),
  );
  const title = now(said?.job.title ?? pack.title);
  const kind = say(said === null ? 'proofSheet' : 'proofSheetSaid');
  return {
    block: titleBlock(pack, kind, title, language),
    title,
    cautions: [...byHazard.values()].map(cautionView),
    proofs: pack.lists.proofs.map(({ id, name, what }) => ({
      name: now(name),
      what: now(what),
      said: proofSaid(`proof/${id}`, said),
    })),
    rotation: pack.rotation,
    flow: pack.flowSeenAt,
    columns: [say('stillUnderPressure'), ...pack.speeds],
    speeds: pack.speeds.length,
    joints: [...joints].map((id) => pack.facts.joints[id]?.name ?? id),
    readings: readingsOf(pack, said),
    verdict: said?.job.verdict == null ? null : now(said.job.verdict),
    followups: pack.lists.followUps.map((row) => {
      const own = said?.job.followUps.find(({ id }) => id === row.id);
      return [now(row.after), now(row.what), own?.owner ?? '', own?.doneBy ?? ''];
    }),
  };
};

/** The last word on one proof, a fail as much as a pass; null leaves lines to write on. */
function proofSaid(thing: string, said: ProofSaid | null): string | null {
  const act = said === null ? null : standing(said).findLast((a) => a.body.thing === thing);
  if (act === null || act === undefined) return null;
  const upTo = act.body.upTo === undefined ? '' : ` ${String(act.body.upTo)}`;
  return `${now(String(act.body.result))}${upTo}, ${whoOf(act)}`;
}

const whoOf = (act: Act): string =>
  [say('byName', act.by), paperWords(act.body) ?? timeWords(act.at)].join(', ');

/** Proofs said in the job and not taken back. */
function standing({ job, acts }: ProofSaid): readonly Act[] {
  const own = acts.filter((act) => act.stream.kind === 'job' && act.stream.id === job.id);
  const gone = new Set(own.filter((a) => a.kind === 'corrected').map((a) => a.body.of));
  return own.filter((act) => act.kind === 'proof' && !gone.has(act.hash));
}

/** A limit that is not stated leaves room to be written in; it is never guessed. */
const readingsOf = (pack: Pack, said: ProofSaid | null): readonly (readonly string[])[] => {
  const rows = pack.limits.map((limit) => {
    const view = valueView(limit);
    return [limit.name, view.shown ?? say('noneStated'), ...readOf(pack, limit, said)];
  });
  const blank = Array.from({ length: 3 }, () => ['', '', ' ', '', '']);
  return [...rows, ...blank];
};

/** Reading, instrument, by; the record asks for no instrument, so its place stays blank. */
function readOf(pack: Pack, limit: ShownValue, said: ProofSaid | null): readonly string[] {
  const label = pack.steps.flatMap((s) => s.asks).find((ask) => ask.name === limit.id)?.label;
  const reading = said?.job.readings.findLast(({ name }) => name === label);
  const act = said?.acts.find(({ hash }) => hash === reading?.act);
  if (reading === undefined) return ['', '', ''];
  return [`${reading.value} ${reading.unit}`.trim(), '', act?.by ?? ''];
}
