/** One piece of a reference function: E = Σ cᵢ·tⁱ, E in mV with the reference junction at 0 °C, t in °C. */
export interface ForwardPiece {
  readonly lowDegC: number;
  readonly highDegC: number;
  readonly c: readonly number[];
  /** Only type K from 0 °C: adds a0·exp(a1·(t − a2)²). */
  readonly exponential?: { readonly a0: number; readonly a1: number; readonly a2: number };
}

/** One piece of the published inverse: t = Σ dᵢ·Eⁱ, with the error NIST states for it. */
export interface InversePiece {
  readonly lowMv: number;
  readonly highMv: number;
  readonly lowDegC: number;
  readonly highDegC: number;
  readonly errorLowDegC: number;
  readonly errorHighDegC: number;
  readonly d: readonly number[];
}

export type ThermocoupleLetter = 'J' | 'K' | 'T' | 'E';

export interface ThermocoupleTable {
  readonly letter: ThermocoupleLetter;
  readonly elements: string;
  readonly forward: readonly ForwardPiece[];
  readonly inverse: readonly InversePiece[];
}

/** Coefficients: NIST Monograph 175 (Burns et al., 1993) / NIST SRD 60, ITS-90. */
export const thermocoupleTables: Readonly<Record<ThermocoupleLetter, ThermocoupleTable>> = {
  J: {
    letter: 'J',
    elements: 'iron / constantan',
    forward: [
      {
        lowDegC: -210,
        highDegC: 760,
        c: [
          0, 0.050381187815, 3.047583693e-5, -8.568106572e-8, 1.3228195295e-10, -1.7052958337e-13, 2.0948090697e-16,
          -1.2538395336e-19, 1.5631725697e-23,
        ],
      },
      {
        lowDegC: 760,
        highDegC: 1200,
        c: [296.45625681, -1.4976127786, 0.0031787103924, -3.1847686701e-6, 1.5720819004e-9, -3.0691369056e-13],
      },
    ],
    inverse: [
      {
        lowMv: -8.095,
        highMv: 0,
        lowDegC: -210,
        highDegC: 0,
        errorLowDegC: -0.05,
        errorHighDegC: 0.03,
        d: [0, 19.528268, -1.2286185, -1.0752178, -0.59086933, -0.17256713, -0.028131513, -0.002396337, -8.3823321e-5],
      },
      {
        lowMv: 0,
        highMv: 42.919,
        lowDegC: 0,
        highDegC: 760,
        errorLowDegC: -0.04,
        errorHighDegC: 0.04,
        d: [0, 19.78425, -0.2001204, 0.01036969, -0.0002549687, 3.585153e-6, -5.344285e-8, 5.09989e-10],
      },
      {
        lowMv: 42.919,
        highMv: 69.553,
        lowDegC: 760,
        highDegC: 1200,
        errorLowDegC: -0.04,
        errorHighDegC: 0.03,
        d: [-3113.58187, 300.543684, -9.9477323, 0.17027663, -0.00143033468, 4.73886084e-6],
      },
    ],
  },
  K: {
    letter: 'K',
    elements: 'chromel / alumel',
    forward: [
      {
        lowDegC: -270,
        highDegC: 0,
        c: [
          0, 0.039450128025, 2.3622373598e-5, -3.2858906784e-7, -4.9904828777e-9, -6.7509059173e-11, -5.7410327428e-13,
          -3.1088872894e-15, -1.0451609365e-17, -1.9889266878e-20, -1.6322697486e-23,
        ],
      },
      {
        lowDegC: 0,
        highDegC: 1372,
        c: [
          -0.017600413686, 0.038921204975, 1.8558770032e-5, -9.9457592874e-8, 3.1840945719e-10, -5.6072844889e-13,
          5.6075059059e-16, -3.2020720003e-19, 9.7151147152e-23, -1.2104721275e-26,
        ],
        exponential: { a0: 0.1185976, a1: -0.0001183432, a2: 126.9686 },
      },
    ],
    inverse: [
      {
        lowMv: -5.891,
        highMv: 0,
        lowDegC: -200,
        highDegC: 0,
        errorLowDegC: -0.02,
        errorHighDegC: 0.04,
        d: [0, 25.173462, -1.1662878, -1.0833638, -0.8977354, -0.37342377, -0.086632643, -0.010450598, -0.00051920577],
      },
      {
        lowMv: 0,
        highMv: 20.644,
        lowDegC: 0,
        highDegC: 500,
        errorLowDegC: -0.05,
        errorHighDegC: 0.04,
        d: [
          0, 25.08355, 0.07860106, -0.2503131, 0.0831527, -0.01228034, 0.0009804036, -4.41303e-5, 1.057734e-6,
          -1.052755e-8,
        ],
      },
      {
        lowMv: 20.644,
        highMv: 54.886,
        lowDegC: 500,
        highDegC: 1372,
        errorLowDegC: -0.05,
        errorHighDegC: 0.06,
        d: [-131.8058, 48.30222, -1.646031, 0.05464731, -0.0009650715, 8.802193e-6, -3.11081e-8],
      },
    ],
  },
  T: {
    letter: 'T',
    elements: 'copper / constantan',
    forward: [
      {
        lowDegC: -270,
        highDegC: 0,
        c: [
          0, 0.038748106364, 4.4194434347e-5, 1.1844323105e-7, 2.0032973554e-8, 9.0138019559e-10, 2.2651156593e-11,
          3.6071154205e-13, 3.8493939883e-15, 2.8213521925e-17, 1.4251594779e-19, 4.8768662286e-22, 1.079553927e-24,
          1.3945027062e-27, 7.9795153927e-31,
        ],
      },
      {
        lowDegC: 0,
        highDegC: 400,
        c: [
          0, 0.038748106364, 3.329222788e-5, 2.0618243404e-7, -2.1882256846e-9, 1.0996880928e-11, -3.0815758772e-14,
          4.547913529e-17, -2.7512901673e-20,
        ],
      },
    ],
    inverse: [
      {
        lowMv: -5.603,
        highMv: 0,
        lowDegC: -200,
        highDegC: 0,
        errorLowDegC: -0.02,
        errorHighDegC: 0.04,
        d: [0, 25.949192, -0.21316967, 0.79018692, 0.42527777, 0.13304473, 0.020241446, 0.0012668171],
      },
      {
        lowMv: 0,
        highMv: 20.872,
        lowDegC: 0,
        highDegC: 400,
        errorLowDegC: -0.03,
        errorHighDegC: 0.03,
        d: [0, 25.928, -0.7602961, 0.04637791, -0.002165394, 6.048144e-5, -7.293422e-7],
      },
    ],
  },
  E: {
    letter: 'E',
    elements: 'chromel / constantan',
    forward: [
      {
        lowDegC: -270,
        highDegC: 0,
        c: [
          0, 0.058665508708, 4.5410977124e-5, -7.7998048686e-7, -2.5800160843e-8, -5.9452583057e-10, -9.3214058667e-12,
          -1.0287605534e-13, -8.0370123621e-16, -4.3979497391e-18, -1.6414776355e-20, -3.9673619516e-23,
          -5.5827328721e-26, -3.4657842013e-29,
        ],
      },
      {
        lowDegC: 0,
        highDegC: 1000,
        c: [
          0, 0.05866550871, 4.5032275582e-5, 2.8908407212e-8, -3.3056896652e-10, 6.502440327e-13, -1.9197495504e-16,
          -1.2536600497e-18, 2.1489217569e-21, -1.4388041782e-24, 3.5960899481e-28,
        ],
      },
    ],
    inverse: [
      {
        lowMv: -8.825,
        highMv: 0,
        lowDegC: -200,
        highDegC: 0,
        errorLowDegC: -0.01,
        errorHighDegC: 0.03,
        d: [
          0, 16.977288, -0.4351497, -0.15859697, -0.092502871, -0.026084314, -0.0041360199, -0.0003403403, -1.156489e-5,
        ],
      },
      {
        lowMv: 0,
        highMv: 76.373,
        lowDegC: 0,
        highDegC: 1000,
        errorLowDegC: -0.02,
        errorHighDegC: 0.02,
        d: [
          0, 17.057035, -0.23301759, 0.0065435585, -7.3562749e-5, -1.7896001e-6, 8.4036165e-8, -1.3735879e-9,
          1.0629823e-11, -3.2447087e-14,
        ],
      },
    ],
  },
};
