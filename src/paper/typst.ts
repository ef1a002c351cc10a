// Sets a document: the template is a file, the data goes in beside it as JSON.

import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

const here = dirname(fileURLToPath(import.meta.url));
const workspace = join(here, 'typ');
const fonts = join(
  dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')),
  'ttf',
);

let compiler: NodeCompiler | null = null;

/** Starting takes a moment and the fonts; one compiler serves all documents. */
const started = (): NodeCompiler => {
  compiler ??= NodeCompiler.create({ workspace, fontArgs: [{ fontPaths: [fonts] }] });
  return compiler;
};

export type Template = 'pack' | 'record' | 'proof' | 'labels';

/** The PDF's bytes; what the typesetter has against the document is thrown in its own words. */
export const setPdf = (template: Template, data: unknown): Uint8Array => {
  const typst = started();
  try {
    const result = typst.compile({
      mainFilePath: join(workspace, `${template}.typ`),
      inputs: { data: JSON.stringify(data) },
    });
    const document = result.result;
    if (document === null || result.hasError()) {
      const error = result.takeDiagnostics();
      const said = error === null ? [] : typst.fetchDiagnostics(error);
      throw new Error(`the ${template} sheet could not be set: ${JSON.stringify(said)}`);
    }
    // A warning is a lost font or glyph as often as not: a sheet with a hole in it is no sheet.
    const warned = result.takeWarnings();
    const warnings = warned === null ? [] : typst.fetchDiagnostics(warned);
    if (warnings.length > 0) throw new Error(`the ${template} sheet: ${JSON.stringify(warnings)}`);
    return new Uint8Array(typst.pdf(document));
  } finally {
    // Without this every document leaves some megabytes behind.
    typst.evictCache(0);
  }
};
