import type { Finding, FindingCode } from "../../planner/findings.ts";
import { CONTROL_WORDS } from "./control-words.ts";
import { PEOPLE_WORDS } from "./people-words.ts";
import { POWER_WORDS } from "./power-words.ts";
import { type Told, tell, type WordedProblem, type Wording } from "./told.ts";
import { TRACK_WORDS } from "./track-words.ts";

export type { WordedProblem, Wording } from "./told.ts";

/** Puts a finding into words for a club member. `text` shows an instant (ms) on the layout clock. */
export function word(finding: Finding, problem: WordedProblem, text: (ms: number) => string): Wording {
  return WORDINGS[finding.code](tell(finding, problem, text));
}

const WORDINGS = { ...TRACK_WORDS, ...POWER_WORDS, ...CONTROL_WORDS, ...PEOPLE_WORDS } satisfies Record<
  FindingCode,
  (told: Told) => Wording
>;
