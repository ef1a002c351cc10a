// A small plant for tests: one pump set with its impeller, twice, differing in one pipe and a stay.

import type { PlantText } from './types.ts';

export const FIXTURE_PLANT = `# A small pumping place, invented for tests.
plant: mill-pond
name: Mill pond
kind: station
source: invented for the demo
issue:
  number: 3
  date: 2026-05-04
  by: Ada Quill
people:
  - name: Ada Quill
    role: engineer in charge
places:
  pump-floor:
    name: Pump floor
lines:
  raw-water:
    name: Raw water from the pond
    medium: fresh water
    pressure: 0.4 bar
    temperature: 8 Cel
closures:
  pond-valve:
    name: Pond valve
    kind: valve
    line: raw-water
    normal: open
    stations:
      - At the pond
    place: pump-floor
`;

export const FIXTURE_TYPE = `# One pump set.
type: pump-set
name: Pump set

parts:
  bed:
    name: Bed plate
    mass: 220 kg
    stays: true
  motor:
    name: Motor
    stays: true
    on: bed
  guard:
    name: Coupling guard
    mass: 3.5 kg
    ways:
      lift:
        gives: "off"
        joints: [guard-feet]
        minutes: 4
  suction-pipe:
    name: Suction pipe
    mass: 11 kg
    line: raw-water
    ways:
      swing:
        gives: aside
        joints: [suction-flange]
        minutes: 5
        support: webbing to the rail
      take:
        gives: "off"
        joints: [suction-flange, suction-far]
        minutes: 9
  pump:
    name: Raw-water pump
    mass: 41 kg
    line: raw-water
    on: bed
    carriedBy: two people with a sling
    ways:
      draw:
        gives: "off"
        joints: [pump-feet, suction-flange]
        clear:
          - part: guard
            as: "off"
          - part: suction-pipe
            as: aside
        minutes: 15
        people: 2
    hazards: [lifting, flooding]
  pump-cover:
    name: Pump cover
    mass: 2 kg
    on: pump
    ways:
      off:
        gives: "off"
        joints: [cover-joint]
        minutes: 3
  impeller:
    name: Impeller
    on: pump
    ways:
      pull:
        gives: "off"
        joints: [impeller-key]
        clear:
          - part: pump-cover
            as: "off"
        minutes: 6
  stay:
    name: Pipe stay
    mass: 1.2 kg
    ways:
      off:
        gives: "off"
        joints: [stay-bolts]
        minutes: 2

joints:
  guard-feet:
    name: Guard feet
    between: [guard, bed]
    fasteners:
      screws:
        kind: cap screw
        count: 4
        holes: [1, 2, 3, 4]
        thread: M8
        length: 20 mm
        grip: 5 mm
        holeDepth: 24 mm
        tightening: guard-screw
    accesses:
      above:
        tool: hex key 6 mm
        place: pump-floor
    undoMinutes: 3
    makeMinutes: 4
  pump-feet:
    name: Pump mounting
    between: [pump, bed]
    fasteners:
      studs:
        kind: stud and nut
        count: 4
        holes: [1, 2, 3, 4]
        thread: M12
        projection: 45 mm
        drawOff: 60 mm
        tightening: pump-foot
    seals:
      shim-gasket:
        kind: gasket
        count: 1
        thickness: 0.5 mm
    accesses:
      from-front:
        clear:
          - part: stay
            as: "off"
        tool: socket 19 mm
        place: pump-floor
    undoMinutes: 12
    makeMinutes: 15
  suction-flange:
    name: Suction flange
    between: [suction-pipe, pump]
    fasteners:
      bolts:
        kind: bolt
        count: 4
        thread: M16
        length: 70 mm
        tightening: flange-bolt
    seals:
      flange-gasket:
        kind: gasket
        count: 1
        size: DN 80
    undoMinutes: 8
    makeMinutes: 10
  suction-far:
    name: Suction pipe, far flange
    between: [suction-pipe, bed]
    fasteners:
      bolts:
        kind: bolt
        count: 4
        thread: M16
        tightening: flange-bolt
    doNotDisturb: set square by the makers of the pipe
  cover-joint:
    name: Pump cover joint
    between: [pump-cover, pump]
    fasteners:
      screws:
        kind: cap screw
        count: 6
        holes: [1, 2, 3, 4, 5, 6]
        thread: M6
        length: 16 mm
        tightening: cover-screw
    seals:
      o-ring:
        kind: ring
        count: 1
        compound: NBR
    undoMinutes: 4
    makeMinutes: 6
  impeller-key:
    name: Impeller on its shaft
    between: [impeller, pump]
    loose:
      key:
        kind: key
        count: 1
    settings:
      float:
        kind: end float
        value: impeller-float
  stay-bolts:
    name: Pipe stay bolts
    between: [stay, bed]
    fasteners:
      bolts:
        kind: bolt
        count: 2
        thread: M10
        length: 30 mm

closures:
  set-drain:
    name: Pump drain cock
    kind: drain
    line: raw-water
    normal: shut
  set-vent:
    name: Pump vent cock
    kind: vent
    line: raw-water
    normal: shut
  set-breaker:
    name: Motor breaker
    kind: breaker
    normal: "on"

sensors:
  suction-pressure:
    name: Suction pressure
    line: raw-water
    joint: suction-flange
    alarm: low suction pressure

isolations:
  pump-isolation:
    by: Ada Quill
    on: 2026-05-04
    closures:
      - closure: pond-valve
        position: shut
      - closure: set-breaker
        position: "off"
    drains: [set-drain]
    proveAt: set-drain
    vents: [set-vent]

targets:
  pump:
    does:
      renew-in-place:
        take:
          - part: pump-cover
            as: "off"
          - part: impeller
            as: "off"
        renews: [impeller]
        interval: impeller-interval
        isolation: pump-isolation
      exchange:
        take:
          - part: pump
            as: "off"
        isolation: pump-isolation
    rotation: clockwise seen from the motor
    speeds: [900 rpm, 1450 rpm]
    limits: [impeller-float]
    alarms: [suction-pressure]
    followUps:
      - after: 4 h
        what: feel the bearing
`;

export const FIXTURE_NORTH = `machine: north-set
name: North pump set
type: pump-set
otherSide: south-set
plate: "MP 1"
position: north end of the pump floor
`;

export const FIXTURE_SOUTH = `machine: south-set
name: South pump set
type: pump-set
otherSide: north-set
plate: "MP 2"
differences:
  - id: second-stay
    why: the wall is nearer here
    change: add
    at: parts/rail
    to:
      name: Hand rail
      mass:
        value: 6 kg
        from: seen once
        by: Ada Quill
      ways:
        lift:
          gives: "off"
          joints: []
          minutes: 2
  - id: rail-in-the-way
    why: the hand rail stands before the feet
    change: set
    at: joints/pump-feet/accesses/from-front/clear
    to:
      - part: stay
        as: "off"
      - part: rail
        as: "off"
  - id: no-guard-places
    why: the floor is open here
    change: remove
    at: joints/guard-feet/accesses/above/place
`;

export const FIXTURE_SHEET = `sheet: pump-set-values
name: Pump set values
for: pump-set
issue: "2"
date: 2026-04-01
authority: Mill pond office
values:
  guard-screw:
    name: Guard screws
    kind: torque
    value: 20 N.m
    threadCondition: dry
  pump-foot:
    name: Pump feet
    kind: torque
    value: 70 N.m
    threadCondition: oiled
    supersedes:
      issue: "1"
      value: 82 N.m
  flange-bolt:
    name: Flange bolts
    kind: torque
    value: 110 N.m
    threadCondition: anti-seize
  cover-screw:
    name: Cover screws
    kind: torque
    value: 8 N.m
    threadCondition: dry
  impeller-float:
    name: Impeller end float
    kind: clearance
    min: 0.10 mm
    max: 0.25 mm
  impeller-interval:
    name: Impeller
    kind: interval
    value: 2000 h
`;

export const fixture = (): PlantText => [
  { file: 'plant.yaml', text: FIXTURE_PLANT },
  { file: 'types/pump-set.yaml', text: FIXTURE_TYPE },
  { file: 'machines/north-set.yaml', text: FIXTURE_NORTH },
  { file: 'machines/south-set.yaml', text: FIXTURE_SOUTH },
  { file: 'values/pump-set.yaml', text: FIXTURE_SHEET },
];

/** The fixture with one file's text changed, or a file added. */
export const fixtureWith = (file: string, text: string): PlantText => [
  ...fixture().filter((one) => one.file !== file),
  { file, text },
];
