// Every stated bound of the program, in one place, so that none is hidden in a loop.

export const limits = {
  quantity: {
    expressionDepth: 100,
    expressionLength: 4_000,
    textLength: 100,
    /** Digits kept of a figure keyed in another unit than was asked. */
    keptDigits: 12,
    /** Digits of a conversion shown beside an issued figure, where fewer were stated. */
    besideDigits: 3,
  },
  /** Sentences within sentences. */
  words: { sentenceDepth: 12 },
  plant: {
    fileBytes: 2_000_000,
    files: 500,
    problems: 500,
    suggestions: 3,
    nodes: 200_000,
    depth: 40,
    mendingRounds: 50,
  },
  removal: {
    unknownMinutes: 15,
    exactOrderSteps: 14,
    exactOrderStates: 1_000_000,
    heuristicSteps: 1_500_000,
    landmarkSteps: 20_000_000,
    narrowingRounds: 5,
    necessarySteps: 25_000_000,
    necessaryWords: 6_000_000,
    nodesInPack: 2_000,
    orderWork: 40_000,
    parts: 20_000,
    reductionRounds: 6,
    seconds: 3_600,
    shakings: 10,
    termsInARow: 60,
  },
  /** Layers and bolt pieces of a joint; draws of its scatter; bolts round a circle. */
  tightening: { layers: 50, draws: 10_000_000, circleBolts: 1_000 },
  pack: {
    liftingKg: 10,
    namedFailures: 8,
    sheetLeastSteps: 4,
    sheetSteps: 24,
    significantDigits: 12,
  },
  /** Cuts worked out to keep services: as many as this work allows, and a least number. */
  isolation: {
    nodes: 20_000,
    edges: 60_000,
    keep: 50,
    idLength: 200,
    leastCuts: 24,
    cutWork: 600_000,
    termsInARow: 60,
    mostEffort: 1_000_000,
    holeMm: 5_000,
    pumps: 20,
    readings: 2_000,
  },
  /** Sizes beyond which an input is a slip of the unit. */
  lifting: {
    weightKg: 100_000,
    lengthCm: 1_000,
    headroomCm: 10_000,
    legs: 4,
    mostLegDeg: 85,
    perMinute: 600,
    recoveryH: 168,
    people: 20,
    wordLength: 60,
  },
  record: { aloneMinutes: 10, bodyBytes: 64_000, parents: 64, actsInState: 1_000_000 },
  sealing: {
    lengthMm: 5_000,
    pressureMPa: 1_000,
    media: 20,
    alternatives: 5,
    nearestNames: 4,
    wordLength: 60,
  },
  /** Circles for counted things (the figure is in words besides); elements in a map column. */
  drawing: { countedThings: 60, mapColumn: 6, sealMarks: 4 },
  app: { photoPx: 1_600, photoQuality: 0.85 },
  archive: { busyMs: 10_000, checkpointPages: 1_000 },
  server: {
    bodyBytes: 8_000_000,
    attachmentBytes: 6_000_000,
    jsonBytes: 1_000_000,
    appFiles: 500,
    actsAtOnce: 200,
    actsBytes: 8_000_000,
    answerSeconds: 10,
    loudSeconds: 3,
    closeSeconds: 2,
    replicaEverySeconds: 5,
    calculationSeconds: 30,
  },
  /** A wrench or an adapter longer than this is a slip of the unit; a factor beyond is no lever. */
  bolting: { bolts: 256, rounds: 12, leverMm: 5_000, leverFactor: 20, adapterShare: 2 },
  /** Combinations of tools weighed for one fastening; nodes of the choice over a whole job. */
  tools: {
    cellLength: 200,
    choiceNodes: 20_000,
    combinations: 400,
    fileBytes: 1_000_000,
    rows: 2_000,
  },
  /** Rows of a list of stores; seals one thing may serve; letters of a scanned code. */
  stores: {
    cellLength: 200,
    codeLength: 2_048,
    fileBytes: 2_000_000,
    fittingRounds: 100_000,
    labels: 500,
    quantity: 1_000_000,
    rows: 5_000,
    served: 50,
    touches: 20,
  },
  /** Rows of a sheet taken in, and letters of its text; a sheet stands 99 years at most. */
  values: { confirmMonths: 1_188, rows: 5_000, sheetBytes: 2_000_000 },
  /** Jobs weighed together; rounds of cutting off sets that only rounding let in. */
  together: {
    idLength: 200,
    jobs: 2_000,
    minutes: 1_000_000,
    nodes: 20_000,
    quickSteps: 20_000,
    rounds: 20,
    termsInARow: 60,
    things: 500,
    value: 1_000_000_000,
  },
  tidy: { columns: 100, fileLines: 400, functionLines: 70 },
} as const;
