// What `tightening` warns of, and what an input lacks for each output that stays open.

import { formatNumber } from '../quantity/quantity.ts';
import type { TighteningInput } from './model.ts';
import { scatterMethods } from './tables/scatter-methods.ts';
import type { Bolt, Issued, Loads, Tightness } from './tightening.ts';
import { vdi } from './working.ts';

const estimated = scatterMethods.find(({ method }) => method.endsWith('estimated, class B'));
const usual =
  estimated === undefined
    ? ''
    : ` (${estimated.method}: ${estimated.low} to ${estimated.high}, ${estimated.source.kind})`;

const few = (value: number) => formatNumber(value, 3);

function frictionCautions(
  input: TighteningInput,
  { band, bearing, strength }: Bolt,
  tight: Tightness,
) {
  const said: string[] = [];
  if (band.range !== null) {
    const { low, high, says, source } = band.range;
    const origin = source.kind === 'published' ? `${source.title}, ${source.place}` : source.kind;
    said.push(`Friction is a range, ${low} to ${high}: ${says} (${origin}).`);
    if (tight.torqueNm !== null && band.low.perForceMm !== null && band.high.perForceMm !== null) {
      const least = tight.torqueNm / band.high.perForceMm;
      const most = tight.torqueNm / band.low.perForceMm;
      said.push(
        `At ${few(tight.torqueNm)} N·m that gives a preload of ${few(least)} to ${few(most)} kN.`,
      );
    }
  }
  const austenitic = strength?.austenitic ?? false;
  if (austenitic)
    said.push('Stainless threads gall: turn slowly, and stop if the torque climbs early.');
  if (band.kind === 'nut factor' && band.nominal.thread !== null) {
    const both = few(band.nominal.thread);
    said.push(`The nut factor is taken as a friction of ${both} in thread and under the head.`);
  }
  if (bearing.assumed && band.nominal.perForceMm !== null && band.kind !== 'nut factor') {
    said.push('Bearing face or hole is assumed: hexagon head of ISO 4014, medium hole of ISO 273.');
  }
  if (input.surface === 'threadlock') {
    said.push('A threadlocked bolt is not checked by turning it again once the adhesive has set.');
  }
  return said;
}

function loadCautions(bolt: Bolt, loads: Loads, tight: Tightness): readonly string[] {
  const { preloadKN } = tight;
  const { strength, thread } = bolt;
  if (preloadKN === null) return [];
  const { breakingKN, proofKN } = loads;
  if (breakingKN !== null && preloadKN >= breakingKN) {
    return ['The preload is at or above the breaking load: the bolt breaks.'];
  }
  const area = thread.stressAreaMm2;
  const yieldMPa = strength?.yieldMPa ?? null;
  const torsion = bolt.band.nominal.torsion ?? 1;
  if (
    area !== null &&
    yieldMPa !== null &&
    preloadKN * 1_000 * torsion > area * yieldMPa * 1.000001
  ) {
    return ['The preload is above yield with the torsion of tightening.'];
  }
  return proofKN !== null && preloadKN > proofKN * 1.000001
    ? ['The preload is above the proof load.']
    : [];
}

function holeCautions(bolt: Bolt, tight: Tightness): readonly string[] {
  const { hole } = bolt;
  if (hole.stripKN === null) {
    return [
      'hole not checked',
      'The thread in the hole may strip before the bolt yields: give threadInto.',
    ];
  }
  const said: string[] = [];
  if (hole.material !== null) {
    const { says, source } = hole.material;
    said.push(
      `The grade of the hole is not known; its shear strength is ${says} (${source.kind}).`,
    );
  }
  if (hole.holeAlone)
    said.push("The bolt's own thread is not checked: its tensile strength is not given.");
  if (hole.insert === 'thread not known') {
    said.push(
      "The insert's outer thread is not given; the hole is weighed as if cut for the bolt itself.",
    );
  }
  if (tight.preloadKN !== null && tight.preloadKN > hole.stripKN) {
    said.push(`The preload strips the thread of the ${hole.weaker} first.`);
  }
  said.push(
    'Thread limits 6g in 6H, or 2A in 2B, are from memory; a worn or damaged thread holds less.',
  );
  return said;
}

function issuedCautions(input: TighteningInput, bolt: Bolt, issued: Issued | null) {
  if (issued === null) return [];
  const said: string[] = [];
  const { toolScatter, scatterFactor, clampNeeded } = input;
  if (toolScatter === undefined && scatterFactor === undefined) {
    said.push(
      `The scatter of the wrench is not counted: give toolScatter or scatterFactor${usual}.`,
    );
  }
  if (scatterFactor !== undefined && bolt.band.range !== null) {
    said.push(
      'The scatter factor holds friction too; with a range of friction besides, the band is wide.',
    );
  }
  if (clampNeeded === undefined)
    said.push('Whether it clamps enough is not judged: give clampNeeded.');
  if (issued.verdict === null)
    said.push('No verdict: the yield point or the torsion is not known.');
  else {
    const kinds = new Set([bolt.band.source.kind, bolt.strength?.source.kind, vdi.kind]);
    const weakest = kinds.has('common practice, no source')
      ? 'common practice, no source: friction'
      : `${vdi.kind}: ${vdi.kind === 'from memory' ? vdi.of : ''}`;
    said.push(`The verdict "${issued.verdict}" rests on what is ${weakest}.`);
  }
  said.push('The issued value stands; the computed one beside it does not replace it.');
  return said;
}

export const cautionsOf = (
  input: TighteningInput,
  bolt: Bolt,
  loads: Loads,
  tight: Tightness,
  issued: Issued | null,
): string[] => [
  ...(bolt.strength?.cautions ?? []),
  ...frictionCautions(input, bolt, tight),
  ...loadCautions(bolt, loads, tight),
  ...holeCautions(bolt, tight),
  ...issuedCautions(input, bolt, issued),
];

type Needs = Readonly<Record<string, readonly string[]>>;

export function needsOf(input: TighteningInput, { thread, strength, bearing, band }: Bolt): Needs {
  const lacks = (what: string, is: unknown) => (is === null || is === undefined ? [what] : []);
  const pitch = lacks('thread/pitch', thread.pitchMm);
  const area = thread.stressAreaMm2 === null ? ['thread/stressArea'] : [];
  const part = (field: 'proof' | 'yield' | 'tensile', value: number | null | undefined) =>
    strength === null ? ['strengthClass'] : lacks(`strengthClass/${field}`, value);
  const proof = part('proof', strength?.proofMPa);
  const yields = part('yield', strength?.yieldMPa);
  const seat = [...lacks('bearingOuter', bearing.outerMm), ...lacks('hole', bearing.holeMm)];
  const friction =
    band.kind === 'none'
      ? ['frictionThread and frictionHead, surface or nutFactor']
      : [
          ...lacks('frictionThread', band.kind === 'nut factor' ? 0 : band.nominal.thread),
          ...lacks('frictionHead', band.kind === 'nut factor' ? 0 : band.nominal.head),
        ];
  const turning = band.nominal.perForceMm === null ? [...friction, ...pitch, ...seat] : [];
  const twist =
    band.nominal.torsion === null
      ? [
          ...(band.nominal.thread === null && band.kind !== 'nut factor' ? friction : []),
          ...pitch,
          ...(band.kind === 'nut factor' ? seat : []),
        ]
      : [];
  const preload =
    input.proofShare === undefined ? [...yields, ...area, ...twist] : [...proof, ...area];
  const noPreload = input.preload === undefined ? preload : [];
  const into = input.threadInto;
  return {
    pitchDiameter: pitch,
    rootDiameter: pitch,
    minorDiameter: pitch,
    stressArea: area,
    proofLoad: [...proof, ...area],
    breakingLoad: [...part('tensile', strength?.tensileMPa), ...area],
    yieldPoint: yields,
    preload: noPreload,
    preloadMin: [...lacks('scatterFactor', input.scatterFactor), ...noPreload],
    torque: unique([...turning, ...noPreload]),
    nutFactor: turning,
    stripping:
      into === undefined
        ? ['threadInto']
        : [
            ...lacks('threadInto/shearStrength', into.shearStrength ?? into.material),
            ...lacks('threadInto/engagement', into.engagement),
            ...pitch,
          ],
    'stripping/share': noPreload,
    issued: [...lacks('issuedTorque', input.issuedTorque), ...turning],
    'issued/yieldShareMin': unique([...yields, ...area, ...twist]),
    'issued/yieldShareMax': unique([...yields, ...area, ...twist]),
    'issued/verdict': unique([...yields, ...area, ...twist]),
  };
}

const unique = (list: readonly string[]): readonly string[] => [...new Set(list)];
