import type { BothWays } from "../../../shared/costing.ts";
import { change } from "../api/ask.ts";
import { clubPath, readClub, sessionPath } from "../api/service.ts";
import { listNights, listVersions } from "../nights/night-records.ts";
import { nextOf, toChoices } from "../wiring/wiring-page.tsx";

/** Where nothing says how fast the layout clock goes: common practice. */
export const USUAL_RATIO = 4;

/** What can be costed: a slot of a night, or a whole timetable version at some clock ratio. */
export interface Costable {
  /** `night slot`, or `timetable code version`. */
  readonly key: string;
  readonly words: string;
}

export const isWhole = (key: string) => key.split(" ").length === 3;

/** The costs of what is wanted; of the next slot where nothing is, of the newest timetable where no night is booked. */
export async function readCosts(club: string, wanted: string | null, ratio: number, signal: AbortSignal) {
  const [record, nights, versions] = await Promise.all([
    readClub(club, signal),
    listNights(club, signal),
    listVersions(club, signal),
  ]);
  const slots = toChoices(nights);
  const wholes = versions.map(({ timetable, version, text }) => ({
    key: `timetable ${timetable} ${version}`,
    words: `${text}, the whole of it`,
  }));
  const choices: readonly Costable[] = [...slots, ...wholes];
  const chosen = choices.find(({ key }) => key === wanted) ?? nextOf(slots) ?? wholes[0] ?? null;
  const costs = chosen === null ? null : await costOf(club, chosen.key, ratio, signal);
  return { record, choices, chosen, costs };
}

async function costOf(club: string, key: string, ratio: number, signal: AbortSignal): Promise<BothWays> {
  const [first = "", second = "", third = ""] = key.split(" ").map(encodeURIComponent);
  if (isWhole(key)) {
    const path = `${clubPath(club)}/timetables/${second}/versions/${third}/both-ways`;
    return (await change<BothWays>("POST", path, { body: { clockRatio: ratio }, signal })).value;
  }
  const path = `${sessionPath(club, decodeURIComponent(first))}/slots/${second}/both-ways`;
  return (await change<BothWays>("POST", path, { signal })).value;
}
