// The types of what the tests use of the launcher.

type Sums = { readonly passed: number; readonly failed: number; readonly skipped: number };
export function sumReport(report: object | undefined, exitCode: number): Sums;
