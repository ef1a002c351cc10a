// Published fits for sea water: viscosity, and the vapour pressure above the Gibbs function's range.

/** Sharqawy, Lienhard, Zubair 2010, eq. 22 and 23; S kg/kg, t °C; 0 to 180 °C, to 0.15 kg/kg. */
export const viscosity = {
  water: [4.2844324477e-5, 0.15700386464, 64.99262005, -91.296496657],
  a: [1.540913604, 0.019981117208, -9.5203865864e-5],
  b: [7.9739318223, -0.075614568881, 0.00047237011074],
  source: {
    kind: 'published',
    title: 'Sharqawy, Lienhard, Zubair, Desalination and Water Treatment 16 (2010) 354-380',
    edition: '2010',
    place: 'eq. 22 and 23; stated accuracy 1.5 %',
  },
} as const;

/** Nayar 2016 on the water line of Hyland and Wexler; S g/kg, T K; 0 to 180 °C, to 160 g/kg. */
export const vapour = {
  water: [-5800.2206, 1.3914993, -0.048640239, 4.1764768e-5, -1.4452093e-8, 6.5459673],
  salt: [-4.5818e-4, -2.0443e-6],
  source: {
    kind: 'published',
    title: 'Nayar, Sharqawy, Banchik, Lienhard, Desalination 390 (2016) 1-24',
    edition: '2016',
    place: 'vapour pressure, on the water line of ASHRAE Fundamentals 2005',
  },
} as const;
