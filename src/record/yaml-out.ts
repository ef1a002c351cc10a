// Writes plain data as YAML 1.2 that a person can go on editing; every doubtful word is quoted.

export type Yaml = string | number | boolean | readonly Yaml[] | { readonly [key: string]: Yaml };

/** Words that some program reads as something else than a word. */
const RESERVED = ['on', 'off', 'yes', 'no', 'y', 'n', 'true', 'false', 'null', 'nan', 'inf'];

const plain = (text: string): boolean =>
  /^[A-Za-z][A-Za-z0-9]*(?:[ -][A-Za-z0-9]+)*$/.test(text) &&
  !RESERVED.includes(text.toLowerCase());

/** JSON's strings are YAML's double-quoted ones. */
const scalar = (value: string | number | boolean): string =>
  typeof value === 'string' && !plain(value) ? JSON.stringify(value) : String(value);

const isMap = (value: Yaml): value is { readonly [key: string]: Yaml } =>
  typeof value === 'object' && !Array.isArray(value);

function flow(value: Yaml): string {
  if (typeof value !== 'object') return scalar(value);
  if (!isMap(value)) return `[${value.map(flow).join(', ')}]`;
  const fields = Object.entries(value).map(([key, inner]) => `${scalar(key)}: ${flow(inner)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

/** What holds no map stands on one line, and so does a short field with its origin. */
function short(value: Yaml): boolean {
  if (typeof value !== 'object') return true;
  const inner = Object.values(value);
  if (!isMap(value)) return inner.every((v) => typeof v !== 'object');
  return inner.length === 0 || ('from' in value && inner.every((v) => !isMap(v) && short(v)));
}

function block(value: Yaml, indent: string): string {
  if (short(value)) return ` ${flow(value)}\n`;
  if (typeof value !== 'object') return ` ${scalar(value)}\n`;
  if (!isMap(value)) return `\n${value.map((v) => `${indent}- ${flow(v)}\n`).join('')}`;
  const rows = Object.entries(value).map(
    ([key, inner]) => `${indent}${scalar(key)}:${block(inner, `${indent}  `)}`,
  );
  return `\n${rows.join('')}`;
}

/** A document of one map, with sentences above it as comments. */
export function yamlText(remarks: readonly string[], content: Yaml): string {
  const head = remarks.map((line) => `# ${line.replaceAll(/\s+/g, ' ')}\n`).join('');
  return `${head}${block(content, '').replace(/^\n/, '')}`;
}
