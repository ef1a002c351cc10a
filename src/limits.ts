// Every stated bound of the program, in one place, so that none is hidden in a loop.

export const limits = {
  quantity: { expressionDepth: 100, expressionLength: 4_000, textLength: 100 },
  plant: { fileBytes: 2_000_000, files: 500, problems: 500, suggestions: 3 },
  removal: {
    unknownMinutes: 15,
    exactOrderSteps: 14,
    nodesInPack: 2_000,
    parts: 20_000,
  },
  record: { bodyBytes: 64_000, parents: 64, actsInState: 1_000_000 },
  server: { bodyBytes: 8_000_000, attachmentBytes: 6_000_000 },
} as const;
