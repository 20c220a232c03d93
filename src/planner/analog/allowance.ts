/**
 * How much searching is left. One allowance is shared by all searches of one check, so that no plan, however
 * made, takes more than a known amount of work; counted in work and not in time, so that the same plan always
 * gets the same answer.
 */
export interface Allowance {
  /** States that one search may visit. */
  readonly mostStates: number;
  /** Outputs and demands that all searches together may still look at. Below 0: it is used up. */
  looks: number;
}

/** About two seconds of work on a plain machine. */
const MOST_LOOKS = 15_000_000;

export function createAllowance(mostStates: number, mostLooks: number = MOST_LOOKS): Allowance {
  return { mostStates, looks: mostLooks };
}
