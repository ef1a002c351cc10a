// Puts a drawing made by the core on the screen; it is read as a picture, never as a page.

import { useLayoutEffect, useRef } from 'react';
import type { Drawing } from '../../drawing/svg.ts';

export function Drawn({ drawing, className }: { drawing: Drawing; className?: string }) {
  const place = useRef<HTMLDivElement>(null);
  const { svg } = drawing;
  useLayoutEffect(() => {
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    place.current?.replaceChildren(document.importNode(parsed, true));
  }, [svg]);
  return <div ref={place} className={className ?? 'drawn'} />;
}
