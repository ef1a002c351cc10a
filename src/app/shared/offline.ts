// This device and what it knows: works from what is kept here, sends and fetches when it can.

import { limits } from '../../limits.ts';
import type { Replica } from '../../record/replica.ts';
import type { Draft } from '../../record/types.ts';
import { type Answer, problem } from './api.ts';
import { db, type OwnAct } from './offline-db.ts';
import { keepPhoto, notKept, notShownOf, type Photo, sayActs, withOwn } from './offline-say.ts';
import { fetchKnown, keepKnown, send } from './offline-send.ts';
import { notKeptWords } from './offline-words.ts';
import { drawnAnew } from './photo-size.ts';
import { wordsNow } from './words-now.ts';

export type DeviceView = {
  /** What the server gave and what was said here, together; null before either is known. */
  readonly replica: Replica | null;
  readonly unsent: { readonly acts: number; readonly photos: number };
  /** Acts of another vessel or station that wait on this device for their own server. */
  readonly elsewhere: number;
  /** What the server would not take, with its reason; it stays here. */
  readonly refused: readonly string[];
  /** Why the server was not reached at the last try. */
  readonly lost: string | null;
  /** Why this browser keeps nothing; nothing can be recorded then. */
  readonly broken: string | null;
};

let server: { readonly seen: string; readonly replica: Replica } | null = null;
let own: readonly OwnAct[] = [];
let photos = 0;
let lost: string | null = null;
let broken: string | null = null;
let view: DeviceView = viewNow();
const listeners = new Set<() => void>();

function viewNow(): DeviceView {
  const replica = server === null ? null : withOwn(server.replica, own);
  const notShown = server === null ? own : notShownOf(server.replica, own);
  const unsent = notShown.filter(({ taken }) => !taken);
  const vessel = server?.replica.vessel.id;
  return {
    replica,
    unsent: { acts: unsent.length, photos },
    elsewhere: own.filter(({ act }) => vessel !== undefined && act.vessel !== vessel).length,
    refused: unsent.flatMap((row) => (row.refused === null ? [] : [row.refused])),
    lost,
    broken,
  };
}

function tell(): void {
  view = viewNow();
  for (const listener of listeners) listener();
}

export const deviceView = (): DeviceView => view;

export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** From what is kept here at once, then from the server; a phone out of reach waits for nobody. */
async function load(): Promise<void> {
  try {
    const [known, rows] = await Promise.all([db.known.get('known'), db.own.toArray()]);
    if (known !== undefined) server = known;
    own = rows;
    photos = await db.photos.where('unsent').equals(1).count();
  } catch (error) {
    broken = notKeptWords(error, wordsNow());
  }
  if (server !== null || broken !== null) tell();
}

async function exchange(): Promise<void> {
  const waiting = server === null ? [] : notShownOf(server.replica, own);
  const failed = server === null ? null : await send(waiting, photos > 0);
  const news = failed === null ? await fetchKnown(server?.seen ?? '') : null;
  lost = failed ?? (news?.ok === false ? news.why : null);
  if (news?.ok === true && news.known !== null) server = news.known;
  if (broken === null) await note(news?.ok === true && news.known !== null);
  tell();
  // The first answer said whose acts these are: what was kept before is sent now.
  if (waiting.length === 0 && news?.ok === true && view.unsent.acts > view.refused.length) {
    void sync();
  }
}

/** The news is kept for a start without a server; failing that takes nothing away from now. */
async function note(fresh: boolean): Promise<void> {
  try {
    own = fresh && server !== null ? await keepKnown({ key: 'known', ...server }) : await rows();
    photos = await db.photos.where('unsent').equals(1).count();
  } catch (error) {
    const w = wordsNow();
    lost ??= w.offline.newsNotKept(notKeptWords(error, w));
  }
}

const rows = (): Promise<readonly OwnAct[]> => db.own.toArray();

let running: Promise<void> | null = null;
let next: Promise<void> | null = null;

/** One at a time; whoever asks meanwhile gets one that starts after he asked. */
export function sync(): Promise<void> {
  if (running !== null) {
    next ??= running.then(() => {
      next = null;
      return sync();
    });
    return next;
  }
  running = exchange().finally(() => {
    running = null;
  });
  return running;
}

export function start(): () => void {
  void load().then(() => sync());
  const again = () => {
    if (document.visibilityState === 'visible' && running === null) void sync();
  };
  const timer = window.setInterval(again, limits.server.replicaEverySeconds * 1000);
  window.addEventListener('online', again);
  document.addEventListener('visibilitychange', again);
  return () => {
    window.clearInterval(timer);
    window.removeEventListener('online', again);
    document.removeEventListener('visibilitychange', again);
  };
}

let turn: Promise<unknown> = Promise.resolve();

/** Kept on this device first; only then does any screen change, and the sending begin. */
export function say(drafts: readonly Draft[]): Promise<Answer<true>> {
  const mine = turn.then(() => sayNow(drafts));
  turn = mine;
  return mine;
}

async function sayNow(drafts: readonly Draft[]): Promise<Answer<true>> {
  const path = drafts[0]?.kind ?? 'act';
  const first = server;
  if (first === null) {
    const { refused: w } = wordsNow();
    return problem({ path, got: null, expected: w.theLog, why: w.noLog });
  }
  try {
    const said = await sayActs(() => (server ?? first).replica, drafts);
    own = said.own;
    tell();
    void sync();
    return said.answer;
  } catch (error) {
    return notKept(path, error);
  }
}

export async function takePhoto(file: Blob): Promise<Answer<Photo>> {
  const kept = await keepPhoto(await drawnAnew(file));
  if (!kept.ok) return kept;
  photos = await db.photos.where('unsent').equals(1).count();
  tell();
  return kept;
}
