// `wrench-setting` as the register shows it: what to set the wrench to with the adapter used.

import { wrenchSettingInput, wrenchSettingOutput } from '../tightening/wrench-input.ts';
import { wrenchSetting } from '../tightening/wrench-setting.ts';
import { simple } from './simple.ts';

export const wrenchSettingCalculation = simple({
  name: 'wrench-setting',
  summary: 'what to set the torque wrench to, where to grip it, whether it may be used',
  help: [
    'torque or setting: give one, the other is worked out; bare numbers are N·m and mm.',
    'runDown: the torque that turns a self-locking nut, added unless includesRunDown.',
    'wrenchLength: drive square to the hand; adapterLength: drive square to the bolt;',
    'adapterAngle: 0 straight ahead, 90 no change, 180 back.',
    'wrench: {min, max, tolerance, calibratedOn, intervalMonths, intervalCycles, cyclesSince},',
    'judged on the day `on`.',
  ],
  input: wrenchSettingInput,
  output: wrenchSettingOutput,
  solve: wrenchSetting,
  example: {
    torque: '80 N.m',
    wrenchLength: '400 mm',
    adapterLength: '50 mm',
    adapterAngle: 0,
    wrench: {
      min: 20,
      max: 100,
      tolerance: 0.04,
      calibratedOn: '2026-03-02',
      cyclesSince: 1_240,
    },
    on: '2026-11-25',
  },
});
