/** Where "now" comes from. Handed in, so that a test can stop it. */
export interface Clock {
  now(): Date;
}

export const systemClock: Clock = { now: () => new Date() };
