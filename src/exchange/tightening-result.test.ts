// Result files: one in the names of the standard is read, one of ours is read back, slips are told.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readResults, writeResult } from './tightening-result.ts';

const seed = 40_450;

/**
 * Made by hand after the field names of OPC 40450-1 (JoiningResultDataType, ResultValueDataType).
 * Unit numbers are the bytes of the UN/CEFACT codes NU and DD, from memory; 1 as "in order" too.
 */
const byHand = {
  ResultMetaData: {
    ResultId: '0b8b4a1e-0001',
    CreationTime: '2026-01-05T09:14:22Z',
    ResultEvaluation: 1,
    JoiningTechnology: { Text: 'Tightening', Locale: 'en' },
    SequenceNumber: 7,
    Name: 'Pump flange bolt 3, pass 2',
    AssociatedEntities: [
      { Name: 'joint', EntityId: 'joint/swp-flange/bolt-3', EntityType: 0 },
      { Name: 'tool', EntityId: 'tool/tw-02', EntityType: 0 },
    ],
  },
  ResultContent: [
    {
      OverallResultValues: [
        {
          MeasuredValue: 48.6,
          Name: 'Final torque',
          ResultEvaluation: 1,
          TargetValue: 50,
          EngineeringUnits: { UnitId: 20053, DisplayName: 'N·m' },
        },
        {
          MeasuredValue: 31,
          Name: 'Final angle',
          EngineeringUnits: { UnitId: 17476, DisplayName: 'deg' },
        },
      ],
      StepResults: [],
      Errors: [],
    },
  ],
};

test('a result made by hand is read: bolt, joint, tool, torque, angle, verdict in our word', () => {
  expect(readResults(byHand)).toEqual({
    ok: true,
    results: [
      {
        id: '0b8b4a1e-0001',
        at: '2026-01-05T09:14:22Z',
        name: 'Pump flange bolt 3, pass 2',
        joint: 'swp-flange',
        hole: '3',
        tool: 'tw-02',
        judged: 'tight',
        torqueNm: 48.6,
        targetNm: 50,
        angleDeg: 31,
      },
    ],
  });
});

test('what is written is read back, in whatever unit it was read off', () => {
  const amount = fc.double({ min: 0.1, max: 900, noNaN: true });
  fc.assert(
    fc.property(
      fc.constantFrom('tight' as const, 'not tight' as const, 'not judged' as const),
      amount,
      fc.constantFrom('N.m', '[lbf_av].[ft_i]'),
      fc.option(fc.constantFrom('tw-1', 'tw-2'), { nil: null }),
      (judged, value, unit, tool) => {
        const bolt = { id: 'a', at: '2026-01-05T09:14:22Z', name: 'n', joint: 'j', hole: '12' };
        const written = writeResult({
          ...bolt,
          tool,
          judged,
          torque: { value, unit },
          target: null,
        });
        const read = readResults([JSON.parse(JSON.stringify(written))]);
        expect(read).toMatchObject({ ok: true, results: [{ ...bolt, tool, judged }] });
        const nm = read.ok ? (read.results[0]?.torqueNm ?? 0) : 0;
        expect(nm / (unit === 'N.m' ? 1 : 1.3558179483314)).toBeCloseTo(value, 9);
      },
    ),
    { seed, numRuns: 200 },
  );
});

test.each([
  ['no bolt named', { entity: 'machine/7', unit: 20053 }, /AssociatedEntities$/],
  ['no torque in it', { entity: 'joint/j/bolt-3', unit: 17476 }, /OverallResultValues$/],
] as const)('%s is a problem with its place', (_, change, path) => {
  const broken = structuredClone(byHand);
  const [joint] = broken.ResultMetaData.AssociatedEntities;
  if (joint !== undefined) joint.EntityId = change.entity;
  const [torque] = broken.ResultContent[0]?.OverallResultValues ?? [];
  if (torque !== undefined) torque.EngineeringUnits.UnitId = change.unit;
  const read = readResults([byHand, broken]);
  expect(read.ok ? [] : read.problems.map((each) => each.path)).toEqual([
    expect.stringMatching(path),
  ]);
});

test('what is no result at all is told, with all that is missing', () => {
  const read = readResults({ ResultMetaData: {} });
  expect(read.ok).toBe(false);
  expect(read.ok ? 0 : read.problems.length).toBeGreaterThan(2);
});
