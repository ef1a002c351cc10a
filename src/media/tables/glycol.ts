// Ethylene glycol in water: coefficients of density, heat capacity and viscosity (Melinder).

/** Σ c[i][j] (t − 31.728 °C)^i (100 w − 30.8462)^j, w the mass fraction; here w as a fraction. */
export const glycol = {
  baseC: 31.728,
  baseFraction: 0.308462,
  mostFraction: 0.6,
  density: [
    [1034, 131.1, 0.749, -106.2, -96.23, 489.1],
    [-0.4781, -0.6876, 0.7855, 1.229, -7.211],
    [-0.002692, 0.004805, -0.003995, -0.01153],
    [4.725e-6, 1.69e-6, 4.982e-5],
  ],
  heatCapacity: [
    [3737, -1799, -993.3, 2610, 1537, -16180],
    [2.93, 10.46, 3.516, -1.189, -42.72],
    [-0.004675, -0.04147, 0.05109, -0.1643],
    [-1.389e-5, 1.847e-5, -7.138e-4],
  ],
  /** Of the logarithm of mPa·s. */
  viscosity: [
    [0.4705, 2.471, 0.03328, 1.659, 3.089, -18.65],
    [-0.0255, -0.01171, 0.01086, 0.003157, 0.01831],
    [1.782e-4, 1.052e-4, 1.051e-4, 4.063e-4],
    [-7.669e-7, -1.634e-6, -6.475e-6],
  ],
  /** °C at which the first ice stands, Σ c[j] (w − base)^j. */
  freezing: [-15.25, -80.8, -133.4, -72.93, 100.6, 11.4],
  source: {
    kind: 'published',
    title: 'Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR',
    edition: '2010',
    place: 'ethylene glycol, coefficients as transcribed in a public library',
  },
} as const;
