// The two calls of the UCUM library that the unit tests use as an independent check.

declare module '@lhncbc/ucum-lhc' {
  type Conversion = { readonly status: string; readonly toVal: number | null };
  type Utils = {
    convertUnitTo(from: string, value: number, to: string): Conversion;
    validateUnitString(code: string): { readonly status: string };
  };
  export const UcumLhcUtils: { getInstance(): Utils };
}
