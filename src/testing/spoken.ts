// What a person could read or hear in the source of a screen: text between tags, properties that
// are shown or spoken, and literals that look like words.

import { codeOf, isTest, lineAt, type SourceFile } from './sources.ts';

export type Spoken = { readonly at: string; readonly text: string };

export const isScreen = (file: SourceFile): boolean =>
  /^src\/app\/.*\.tsx?$/.test(file.path) && !isTest(file);

/** Between a tag's end and the next tag or brace; an arrow or a comparison ends no tag. */
const BETWEEN_TAGS = /(?<![=\s-])>([^<>{}=;()|&]*\p{L}[^<>{}=;()|&]*)(?=<|\{)/gu;
/** A line of its own within an element: words and the signs of a sentence, nothing of code. */
const ALONE = /^\s+((?!case )[\p{L}’-]+(?:[,.:;]? [\p{L}\d’-]+)*[.:]?) *$/gmu;
const SHOWN = 'label|title|placeholder|empty|alt|head|legend|name|aria-label|aria-description';
const PROPERTY = new RegExp(`\\b(?:${SHOWN})="([^"]*\\p{L}[^"]*)"`, 'gu');
const LITERAL = /'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`/g;

/** Words of a language, no class, path or key: two beside each other, or a capital. */
const SAYS = /\p{L}{2,}[,.:;]? \p{L}{2,}|^\p{Lu}\p{Ll}+[.:…]?$/u;
const NOT_SAID = /\bimport\b|\bfrom '|className=|new \w*Error|\bcase '|[!=]== '|\btype="/;
const HOLE = /\$\{(?:[^{}]|\{[^{}]*\})*\}/g;

export function spokenIn(file: SourceFile): readonly Spoken[] {
  const code = codeOf(file.text, true);
  const lines = code.split('\n');
  // What stands in a text is read from the file itself: there the holes of a template are marked.
  const found = (pattern: RegExp): Spoken[] =>
    [...code.matchAll(pattern)].map((match) => {
      const group = match[1] ?? match[2] ?? '';
      const from = match.index + match[0].indexOf(group);
      const text = file.text.slice(from, from + group.length).replace(HOLE, '…');
      return { at: `${file.path}:${lineAt(code, from)}`, text: text.trim() };
    });
  const isCode = ({ at }: Spoken) => NOT_SAID.test(lines[Number(at.split(':')[1]) - 1] ?? '');
  const literals = found(LITERAL).filter((each) => SAYS.test(each.text) && !isCode(each));
  if (!file.path.endsWith('.tsx')) return literals;
  return [...found(BETWEEN_TAGS), ...found(PROPERTY), ...found(ALONE).filter(isText), ...literals];
}

/** A word alone on its line may be a name of code in a list; two beside each other are not. */
const isText = ({ text }: Spoken): boolean => / /.test(text) || /^\p{Lu}\p{Ll}+[.:]?$/u.test(text);
