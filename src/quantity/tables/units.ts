// Units by dimension: UCUM code, printed sign, exact factor to the SI unit, everyday spellings, offset.

/** The offset is added before the factor is applied: kelvin = (°F + 459.67) × 5/9. */
export type UnitRow = readonly [
  code: string,
  symbol: string,
  factor: string,
  spellings: readonly string[],
  offset?: string,
];

// Exact by definition: inch 0.0254 m and pound 0.45359237 kg (international yard and pound, 1959),
// standard gravity 9.80665 m/s2 (3rd CGPM, 1901), US gallon 231 in3, nautical mile 1852 m.
// Each factor is compared with an independent implementation of UCUM in units.test.ts.
const POUND_FORCE = '0.45359237*9.80665';

export const unitRows: Readonly<Record<string, readonly UnitRow[]>> = {
  ratio: [
    ['1', '', '1', []],
    ['%', '%', '0.01', ['percent']],
    ['g/kg', 'g/kg', '0.001', []],
  ],
  angle: [['deg', '°', '1', ['degrees']]],
  length: [
    ['m', 'm', '1', []],
    ['cm', 'cm', '0.01', []],
    ['mm', 'mm', '0.001', []],
    ['um', 'µm', '0.000001', []],
    ['[in_i]', 'in', '0.0254', ['inch', '"']],
    ['[ft_i]', 'ft', '0.3048', ['foot', 'feet']],
  ],
  area: [
    ['m2', 'm²', '1', []],
    ['cm2', 'cm²', '0.0001', []],
    ['mm2', 'mm²', '0.000001', []],
    ['[in_i]2', 'in²', '0.0254*0.0254', ['in2']],
  ],
  volume: [
    ['m3', 'm³', '1', []],
    ['L', 'l', '0.001', ['litre', 'litres']],
    ['mL', 'ml', '0.000001', []],
    ['[gal_us]', 'gal (US)', '231*0.0254*0.0254*0.0254', ['gal']],
  ],
  mass: [
    ['kg', 'kg', '1', []],
    ['g', 'g', '0.001', []],
    ['t', 't', '1000', ['tonne']],
    ['[lb_av]', 'lb', '0.45359237', ['lbs']],
  ],
  time: [
    ['s', 's', '1', ['sec']],
    ['min', 'min', '60', ['minute', 'minutes']],
    ['h', 'h', '3600', ['hour', 'hours']],
    ['d', 'd', '86400', ['day', 'days']],
  ],
  'share of time': [['h/d', 'h/d', '1/24', ['h/day', 'hours/day']]],
  rate: [
    ['Hz', 'Hz', '1', ['1/s', '/s']],
    ['1/min', '1/min', '1/60', ['/min', 'rpm', 'r/min', 'min-1', 'min⁻¹']],
    ['1/h', '1/h', '1/3600', ['/h']],
  ],
  speed: [
    ['m/s', 'm/s', '1', []],
    ['km/h', 'km/h', '1/3.6', []],
    ['[kn_i]', 'kn', '1852/3600', ['knot', 'knots']],
  ],
  force: [
    ['N', 'N', '1', []],
    ['kN', 'kN', '1000', []],
    ['kgf', 'kgf', '9.80665', []],
    ['[lbf_av]', 'lbf', POUND_FORCE, []],
  ],
  torque: [
    ['N.m', 'N·m', '1', ['Nm']],
    ['kN.m', 'kN·m', '1000', ['kNm']],
    ['kgf.m', 'kgf·m', '9.80665', ['m.kgf']],
    ['[lbf_av].[ft_i]', 'lbf·ft', `${POUND_FORCE}*0.3048`, ['ft.lbf', '[ft_i].[lbf_av]']],
    ['[lbf_av].[in_i]', 'lbf·in', `${POUND_FORCE}*0.0254`, ['in.lbf', '[in_i].[lbf_av]']],
  ],
  pressure: [
    ['Pa', 'Pa', '1', []],
    ['kPa', 'kPa', '1000', []],
    ['MPa', 'MPa', '1000000', []],
    ['GPa', 'GPa', '1000000000', []],
    ['N/mm2', 'N/mm²', '1000000', []],
    ['bar', 'bar', '100000', []],
    ['mbar', 'mbar', '100', []],
    ['[psi]', 'psi', `${POUND_FORCE}/0.0254/0.0254`, ['lbf/in2']],
    ['m[H2O]', 'mH₂O', '9806.65', ['mH2O', 'mWC']],
    ['mm[Hg]', 'mmHg', '133.322', []],
    ['atm', 'atm', '101325', []],
  ],
  temperature: [
    ['K', 'K', '1', []],
    ['Cel', '°C', '1', ['degC'], '273.15'],
    ['[degF]', '°F', '5/9', ['degF'], '459.67'],
  ],
  'volume flow': [
    ['m3/s', 'm³/s', '1', []],
    ['m3/h', 'm³/h', '1/3600', []],
    ['L/s', 'l/s', '0.001', []],
    ['L/min', 'l/min', '0.001/60', ['lpm']],
    ['[gal_us]/min', 'gal/min (US)', '231*0.0254*0.0254*0.0254/60', ['gal/min', 'gpm']],
  ],
  'mass flow': [
    ['kg/s', 'kg/s', '1', []],
    ['kg/h', 'kg/h', '1/3600', []],
  ],
  power: [
    ['W', 'W', '1', []],
    ['kW', 'kW', '1000', []],
  ],
  energy: [
    ['J', 'J', '1', []],
    ['kJ', 'kJ', '1000', []],
  ],
  density: [['kg/m3', 'kg/m³', '1', []]],
  'specific energy': [
    ['J/kg', 'J/kg', '1', []],
    ['kJ/kg', 'kJ/kg', '1000', []],
  ],
  'heat capacity': [
    ['J/(kg.K)', 'J/(kg·K)', '1', []],
    ['kJ/(kg.K)', 'kJ/(kg·K)', '1000', []],
  ],
  viscosity: [
    ['Pa.s', 'Pa·s', '1', []],
    ['mPa.s', 'mPa·s', '0.001', []],
  ],
  'kinematic viscosity': [
    ['m2/s', 'm²/s', '1', []],
    ['mm2/s', 'mm²/s', '0.000001', []],
  ],
  stiffness: [
    ['N/m', 'N/m', '1', []],
    ['kN/mm', 'kN/mm', '1000000', []],
  ],
  'heat transfer': [['W/(m2.K)', 'W/(m²·K)', '1', []]],
  fouling: [['m2.K/W', 'm²·K/W', '1', []]],
  'heat conductance': [['W/K', 'W/K', '1', []]],
};
