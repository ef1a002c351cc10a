// As found in five answers of one tap each; the fifth records it, in whatever order they come.

import { useRef, useState } from 'react';
import { GRADES } from '../../pack/as-found.ts';
import type { ActBody, JobState } from '../../record/types.ts';
import { Choice, Main, Plain } from '../shared/controls.tsx';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { Keypad } from '../work/keypad.tsx';

/** What has been answered; a photo is a hash, or said to be none. */
type Said = {
  readonly grade?: string;
  readonly failed?: string;
  readonly photo?: string | null;
  readonly hours?: number | null;
  readonly missing?: number;
};

const ALL = ['grade', 'failed', 'photo', 'hours', 'missing'] as const;

type AsFoundFormProps = {
  readonly job: JobState;
  readonly failed: readonly string[];
  readonly disabled: boolean;
  readonly onSay: (body: ActBody) => void;
};

export function AsFoundForm({ job, failed, disabled, onSay }: AsFoundFormProps) {
  const w = useWords();
  const told = useTold();
  const { state } = useVessel();
  const [said, setSaid] = useState<Said>({});
  const last = state.machines[job.machine]?.hours.at(-1)?.hours ?? null;
  const left = (now: Said) => ALL.filter((each) => now[each] === undefined);
  const record = (now: Said) => {
    const { photo, hours, ...rest } = now;
    onSay({
      ...rest,
      ...(typeof photo === 'string' ? { photo } : {}),
      ...(typeof hours === 'number' ? { hours } : {}),
    } as ActBody);
  };
  const answer = (more: Said) => {
    const now = { ...said, ...more };
    setSaid(now);
    if (left(now).length === 0 && !disabled) record(now);
  };
  const lacks = left(said);
  return (
    <div data-as-found={lacks.length}>
      <Choice
        label={w.asFound.grade}
        value={said.grade ?? ''}
        onChange={(grade) => answer({ grade })}
        choices={GRADES}
      />
      <Choice
        label={w.asFound.failed}
        value={said.failed ?? ''}
        onChange={(what) => answer({ failed: what })}
        choices={failed}
        say={told}
      />
      <PhotoOrNone value={said.photo} onSay={(photo) => answer({ photo })} />
      <Figure
        label={w.asFound.hours}
        unit="h"
        usual={[
          ...(last === null ? [] : [{ words: w.asFound.lastRead(last), value: last }]),
          { words: w.asFound.notRead, value: null },
        ]}
        value={said.hours}
        onSay={(hours) => answer({ hours })}
      />
      <Figure
        label={w.asFound.missing}
        unit=""
        usual={[0, 1, 2, 3].map((value) => ({
          words: value === 0 ? w.asFound.none : String(value),
          value,
        }))}
        value={said.missing}
        onSay={(missing) => answer({ missing: Math.round(missing ?? 0) })}
      />
      {lacks.length === 0 ? (
        <Main onPress={() => record(said)} disabled={disabled}>
          {w.asFound.recordIt}
        </Main>
      ) : (
        <p className="lacks">
          {w.asFound.stillToSay(lacks.map((each) => w.asFound[each].toLowerCase()).join('; '))}
        </p>
      )}
    </div>
  );
}

type PhotoProps = {
  readonly value: string | null | undefined;
  readonly onSay: (photo: string | null) => void;
};

/** A picture or none: one tap either way. */
function PhotoOrNone({ value, onSay }: PhotoProps) {
  const w = useWords();
  const input = useRef<HTMLInputElement>(null);
  const { keepPhoto } = useVessel();
  const keep = async (file: File) => {
    const kept = await keepPhoto(file);
    if (kept !== null) onSay(kept.hash);
  };
  return (
    <fieldset className="choice">
      <legend>{w.asFound.photo}</legend>
      {typeof value === 'string' ? (
        <div className="seen-photo">
          <KeptPhoto hash={value} alt={w.asFound.pictureOf} />
        </div>
      ) : null}
      <Plain onPress={() => input.current?.click()}>
        {typeof value === 'string' ? <b>{w.asFound.taken}</b> : w.asFound.takePhoto}
      </Plain>{' '}
      <Plain onPress={() => onSay(null)}>
        {value === null ? <b>{w.asFound.noPhoto}</b> : w.asFound.noPhoto}
      </Plain>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={w.asFound.photo}
        accept="image/jpeg,image/png"
        capture="environment"
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file !== undefined) void keep(file);
          e.target.value = '';
        }}
      />
    </fieldset>
  );
}

type FigureProps = {
  readonly label: string;
  readonly unit: string;
  readonly usual: readonly { readonly words: string; readonly value: number | null }[];
  readonly value: number | null | undefined;
  readonly onSay: (value: number | null) => void;
};

/** The usual answers are one tap each; any other figure is keyed in and then kept. */
function Figure({ label, unit, usual, value, onSay }: FigureProps) {
  const w = useWords();
  const [keying, setKeying] = useState(false);
  const [keyed, setKeyed] = useState('');
  const another = w.asFound.another;
  const chosen = usual.find((each) => each.value === value)?.words;
  return (
    <>
      <Choice
        label={label}
        value={keying || (value !== undefined && chosen === undefined) ? another : (chosen ?? '')}
        onChange={(words) => {
          setKeying(words === another);
          const one = usual.find((each) => each.words === words);
          if (one !== undefined) onSay(one.value);
        }}
        choices={[...usual.map((each) => each.words), another]}
      />
      {keying ? (
        <>
          <Keypad label={label} unit={unit} value={keyed} onChange={setKeyed} />
          <Plain
            onPress={() => {
              setKeying(false);
              onSay(Number(keyed));
            }}
            disabled={!/\d/.test(keyed) || Number(keyed) < 0}
          >
            {`${keyed === '' ? '–' : keyed} ${unit}`.trim()}
          </Plain>
        </>
      ) : null}
    </>
  );
}
