// English: the fastenings of a pack, their values weighed and their tools, on screens and sheets.

export const fasteningSentences = {
  partOfJoint: (joint: string, what: string) => `${joint}, ${what}`,
  noSingleTorque: (value: string) => `${value} is no single torque`,
  mayUseTool: (tool: string, fastening: string) => `${tool}: may it be used for ${fastening}?`,
  mayUseToolWhy: (against: readonly string[]) =>
    `no wrench held may be used for it; this one comes nearest, but: ${against.join('; ')}`,
  mayUseNamedWhy: (against: readonly string[]) =>
    `it is used by somebody's name or not at all: ${against.join('; ')}`,
  whichTool: (fastening: string) =>
    `${fastening}: which tool does it, and where does it come from?`,
  whichToolWhy: (why: string) => `with the tools held it cannot be done: ${why}`,
  valueRight: (fastening: string, value: string) => `${fastening}: is ${value} right?`,
  valueRightWhy: (share: string) =>
    `even at the highest friction this torque takes the bolt to ${share} % of its yield point`,
};

export const fastenings = {
  title: 'Fastenings',
  value: 'Value',
  condition: 'Thread',
  noCondition: 'thread condition not stated: the clamp is shown for both',
  clamp: (min: string, max: string) => `clamps ${min} to ${max}`,
  needed: (force: string) => `the joint needs ${force} of each bolt, embedding not counted`,
  ofYield: (min: string, max: string) => `${min} to ${max} % of the bolt's yield`,
  strips: (load: string, weaker: 'hole' | 'bolt') => `the thread of the ${weaker} bears ${load}`,
  surface: {
    'as received': 'as received',
    oiled: 'oiled',
    'anti-seize': 'anti-seize',
    threadlock: 'threadlock',
  },
  verdicts: {
    'cannot be right': 'cannot be right: the bolt yields at any friction',
    'may yield': 'may yield where friction is lowest',
    'may strip': 'may strip the weaker thread where friction is lowest',
    'too loose': 'too loose where friction is highest',
    fits: 'fits bolt and hole',
  },
  notJudged: 'not judged',
  notChecked: (why: string) => `Cannot be checked: ${why}.`,
  setTo: (wrench: string, setting: string) => `${wrench}: set to ${setting}`,
  grip: (mm: string) => `hand at the grip mark, ${mm} mm from the square`,
  gripMm: (mm: string) => `hand here, ${mm} mm`,
  working: 'Working',
  gripUnknown: 'length to its grip mark not known',
  crowfoot: (mm: string, angle: string) => `open end ${mm} mm out, ${angle}`,
  square: 'square to the wrench',
  ahead: 'straight ahead',
  back: 'turned back along the wrench',
  atAngle: (deg: string) => `at ${deg}° to the wrench`,
  below: 'below what its scale may be used for: by feel, the next round counts',
  anyway: (by: string, against: string) => `Used anyway by ${by}: ${against}`,
  tools: 'Tools to lay out',
  fewest: (n: number) => `${n} tools do the whole job; no choice of fewer does.`,
  notProven: (n: number, bound: number) => `${n} tools; at least ${bound} are needed.`,
  missing: 'Missing before anything is opened',
  nearest: (tool: string, whyNot: string) => `nearest: ${tool} (${whyNot})`,
  laidAside: 'Left in the drawer',
  instead: (tools: string) => `instead: ${tools}`,
  asks: 'To be measured or said first',
  noList: 'No list of the tools held is kept: tools are as the description of the machine says.',
  inDateOn: (day: string) => `in date on ${day}`,
  tight: 'tight',
  notTight: 'not tight',
};
