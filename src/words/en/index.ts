// All English words of screens and sentences, one file a screen or room; every language has these.

import { acts } from './acts.ts';
import { answers } from './answers.ts';
import * as asFoundSheets from './as-found.ts';
import { before } from './before.ts';
import { calcForm } from './calc-form.ts';
import { calcSheet } from './calc-sheet.ts';
import { eyes } from './eyes.ts';
import { fastenings } from './fastenings.ts';
import { handOver } from './hand-over.ts';
import { lifting } from './lifting.ts';
import * as logSheets from './log.ts';
import { numbers } from './numbers.ts';
import { offline } from './offline.ts';
import * as packSheets from './pack-screen.ts';
import { paper } from './paper.ts';
import * as recordSheets from './record-screen.ts';
import { seals } from './seals.ts';
import { setup } from './setup.ts';
import * as sheets from './sheet.ts';
import { stores } from './stores.ts';
import * as stripSheets from './stripping.ts';
import { tight } from './tight.ts';
import { values } from './values.ts';
import * as workSheets from './work.ts';

export const en = {
  acts,
  answers,
  ...asFoundSheets,
  before,
  calcForm,
  calcSheet,
  eyes,
  fastenings,
  handOver,
  lifting,
  ...logSheets,
  numbers,
  offline,
  ...packSheets,
  ...recordSheets,
  ...sheets,
  ...stripSheets,
  ...workSheets,
  paper,
  seals,
  setup,
  stores,
  tight,
  values,
};

export type Words = typeof en;
