// How wide a drawing may be, in CSS px: the sheet's own width, never more than a laptop's column.

export const tallyWidth = (): number => Math.max(288, Math.min(window.innerWidth, 900) - 32);
