// The smallest plant a server can be tested with: one pump set, one pump, one joint. Invented.

import { readPlant } from '../plant/read.ts';
import type { Plant } from '../plant/types.ts';

const FILES = {
  'plant.yaml': `
plant: small
name: Small works
kind: station
source: invented for the demo
issue: { number: 1, date: 2026-01-02, by: Una }
people: [{ name: Una, role: fitter }]
`,
  'type.yaml': `
type: pump-set-type
name: Pump set
parts:
  bed: { name: Bed, stays: true }
  pump:
    name: Pump
    mass: 12 kg
    ways: { out: { gives: 'off', joints: [feet], minutes: 5 } }
joints:
  feet:
    name: Pump feet
    between: [pump, bed]
    fasteners: { bolts: { kind: bolt, count: 4, thread: M10 } }
    undoMinutes: 4
    accesses: { top: { tool: 16 mm socket } }
targets:
  pump: { does: { exchange: { take: [{ part: pump, as: 'off' }] } } }
`,
  'machine.yaml': `
machine: pump-set
name: Pump set
type: pump-set-type
`,
};

export function smallPlant(): Plant {
  const files = Object.entries(FILES).map(([file, text]) => ({ file, text }));
  const { plant, problems } = readPlant(files);
  if (plant === null) throw new Error(`the small plant is refused: ${JSON.stringify(problems)}`);
  return plant;
}
