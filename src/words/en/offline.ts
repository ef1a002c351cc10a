// English: a phone without signal: what is here only, what is missing, what went wrong.

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

export const offline = {
  acts: (n: number) => counted(n, 'act'),
  photos: (n: number) => counted(n, 'photo'),
  and: ' and ',
  here: (what: string) => `${what} on this phone only, not yet sent`,
  keepOpen: 'Keep this page open: what is recorded stays on this phone and is sent later.',
  notSecure: 'No start without signal on this phone: not a secure connection.',
  noWorker: 'No start without signal on this phone: its browser keeps no app.',
  full: 'this phone is full: free some space, then say it again',
  keepsNothing:
    'this browser keeps nothing on this phone: a private window, or storage is turned off',
  couldNot: (why: string) => `this phone could not keep it (${why}): say it again`,
  toBeKept: 'to be kept on this phone',
  tooLarge: 'it is too large',
  atMost: (bytes: number) => `at most ${bytes} bytes`,
  aPicture: 'a JPEG or PNG picture',
  noPicture: 'its bytes are neither',
  newsNotKept: (why: string) => `what is new could not be kept: ${why}`,
  broken: (why: string) => `Nothing can be recorded here: ${why}`,
  notTaken: (n: number, why: string) => `; the server would not take ${n}: ${why}`,
  elsewhere: (n: number) => `${n} said for another vessel or station, still on this phone only`,
  cutOff: (why: string) => `Cut off: ${why}. You can go on: what you record is kept on this phone.`,
};
