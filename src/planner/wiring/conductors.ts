/** Feet in a thousand, as metres: the foot is 0.3048 m (1959 definition). */
const THOUSAND_FEET_M = 304.8;

/**
 * Greatest resistance of one wire at 20 °C in ohms per metre, plain copper: IEC 60228 (2004) tables 1 to 3, classes 1
 * and 2 (solid) and 5 and 6 (flexible); American gauges from Floyd, Electric Circuit Fundamentals, in ohms per 1,000 ft.
 */
export const OHM_PER_METRE_AT_20 = {
  "0.5 mm2 solid": 0.036,
  "0.5 mm2 flexible": 0.039,
  "0.75 mm2 solid": 0.0245,
  "0.75 mm2 flexible": 0.026,
  "1 mm2 solid": 0.0181,
  "1 mm2 flexible": 0.0195,
  "1.5 mm2 solid": 0.0121,
  "1.5 mm2 flexible": 0.0133,
  "2.5 mm2 solid": 0.00741,
  "2.5 mm2 flexible": 0.00798,
  "4 mm2 solid": 0.00461,
  "4 mm2 flexible": 0.00495,
  "AWG 24": 25.67 / THOUSAND_FEET_M,
  "AWG 22": 16.14 / THOUSAND_FEET_M,
  "AWG 20": 10.15 / THOUSAND_FEET_M,
  "AWG 18": 6.385 / THOUSAND_FEET_M,
  "AWG 16": 4.016 / THOUSAND_FEET_M,
  "AWG 14": 2.525 / THOUSAND_FEET_M,
  "AWG 12": 1.588 / THOUSAND_FEET_M,
  "AWG 10": 0.9989 / THOUSAND_FEET_M,
} as const;
