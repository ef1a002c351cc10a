// What can be taken away from the screen: the printed pack, and the request it was made from.

import type { Pack } from '../../pack/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useLanguage, useWords } from '../shared/say.tsx';

export function TakeAway({ pack }: { readonly pack: Pack }) {
  const { sentences: w } = useWords();
  const { name } = useHolder();
  const [language] = useLanguage();
  const save = () => {
    const text = `${JSON.stringify(pack.request, null, 2)}\n`;
    const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
    const link = document.createElement('a');
    link.href = url;
    link.download = 'request.json';
    link.click();
    URL.revokeObjectURL(url);
  };
  return (
    <section aria-labelledby="paper-head">
      <h2 id="paper-head">{w.onPaper}</h2>
      <p className="acts-row">
        <a
          className="plain"
          href={`/api/packs/${pack.id}/pdf?for=${encodeURIComponent(name)}&language=${language}`}
          target="_blank"
          rel="noreferrer"
        >
          {w.printed}
        </a>{' '}
        <Plain onPress={save}>{w.saveRequest}</Plain>
      </p>
    </section>
  );
}
