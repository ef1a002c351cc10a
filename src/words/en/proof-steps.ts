// English: line-up, filling and proof.

export const proofSentences = {
  proofFill: 'Fill and look',
  proofFillWhat: 'every disturbed wet joint dry at standing head',
  proofAlarms: 'Alarms and sensors',
  proofAlarmsWhat: 'every alarm and sensor that was disturbed made to act',
  proofRunning: 'Running look',
  proofRunningWhat:
    'every disturbed joint dry and quiet, readings within what is issued, at each speed',
  proofHot: 'Hot look after stopping',
  proofHotWhat: 'every disturbed joint, weep hole, bilge and oil looked at just after stopping',

  toolsCounted: 'Tools, rags, bags and old seals counted: none left inside or under lagging.',
  toolsCountedWhy: 'a rag left in burns or blocks on the first run',
  shutAndPlug: (name: string) => `Shut ${name} and plug it.`,
  shutAndPlugWhy: 'it was opened for this job',
  shutVent: (name: string) => `${name}: wait for water without air, then shut it.`,
  shutVentWhy: 'air left at a high point stops the flow',
  prime: (how: string) => `Prime: ${how}.`,
  primeWhy: 'a pump started dry or air-bound moves nothing',
  standingHead: (joints: readonly string[]) =>
    `10 min at standing head, dry card on each: ${joints.join('; ')}.`,
  standingHeadWhy: 'a leak is cheapest before the machine turns (common practice, no source)',
  tagOff: (n: number, name: string, station: string) => `Tag ${n} off ${name}, ${station}.`,
  tagOffWhy: 'only when all who rely on it have said so',
  normalNotStated: 'NOT STATED, ask',
  giveBack: (name: string, crack: boolean, normal: string) =>
    `${name}. ${
      crack
        ? 'Crack it with a hand at the joints and look; then bring it fully to '
        : 'Bring it to '
    }its normal position: ${normal}.`,
  giveBackWhy: 'every device goes back to its normal position',
  speedsOfProcedure: 'the speeds in the procedure',
  runningLook: (speeds: string) =>
    `Running look at ${speeds}: wait at each until the readings settle; ` +
    'every disturbed joint, noise, flow overboard.',
  runningLookWhy: 'an idle run proves idle only',
  hotLook:
    'Just stopped and hot: look again at every disturbed joint, the weep hole, bilge and oil.',
  hotLookWhy: 'some leaks show only hot, or only when pressure falls',
  handTurn: (rotation: string) =>
    `Turn by hand one full cycle, ${rotation}; starting still cut off. Turns free?`,
  handTurnWhy: 'what binds is found by hand before the engine finds it',
  everyoneClear: (start: boolean) =>
    `Everyone clear for the ${start ? 'start' : 'hand turn'}: ` +
    'each called by name and answered; tools out.',
  everyoneClearWhy: 'nothing turns while someone is not clear',
  makeAlarmsAct: (what: readonly string[]) =>
    `Make each alarm or sensor act that was disturbed: ${what.join('; ')}.`,
  makeAlarmsActWhy: 'an unplugged sensor gives no alarm and stops nothing',
  firstStart: (part: string, flowAt: string | null) =>
    `First start, lowest speed; one person at ${part}, one at the stop.` +
    `${flowAt === null ? '' : ` Flow must be seen at ${flowAt}.`} ` +
    'No flow, a leak or an odd noise: stop.',
  firstStartWhy: 'the first minutes show what was forgotten',
} as const;
