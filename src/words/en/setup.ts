// English: the screen on which a person sets this phone up for themselves.

export const setup = {
  language: 'Language',
  units: 'Units',
};
