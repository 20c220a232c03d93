import { resolveLocalTime, toLocalText } from "./local-time.ts";

/** The instant that a wall time stands for, or a sentence that says why it stands for none and what to write. */
export type WallTime = { readonly instant: Date } | { readonly fault: string };

const FIRST_YEAR = 1_900;

/**
 * Reads a wall time of the contract, `2027-03-27T19:00` with or without seconds and offset, on the clocks of an IANA
 * zone. A time that the clocks skip is refused, one that they show twice needs its offset, and an offset must be one
 * that the clocks then have.
 */
export function readWallTime(text: string, zone: string): WallTime {
  const [, date = "", time = "", offset] = /^([\d-]{10})T([\d:]{5,8})(Z|[+-]\d\d:\d\d)?$/.exec(text) ?? [];
  const found = resolveLocalTime({ date, time }, zone);
  if (found.kind === "invalid" || Number(date.slice(0, 4)) < FIRST_YEAR)
    return { fault: `The calendar has no ${date} ${time}: write a date and time as 2027-03-27T19:00.` };
  if (found.kind === "skipped")
    return {
      fault: `In ${zone} the clocks go from ${found.from} to ${found.to} that night, so ${time} never comes: write ${found.to} or later, or a time before ${found.from}.`,
    };
  const candidates = found.kind === "instant" ? [found.instant] : [found.earlier, found.later];
  if (offset === undefined && found.kind === "instant") return { instant: found.instant };
  const wanted = offset === undefined ? Number.NaN : Date.parse(`${date}T${time}${offset}`);
  const instant = candidates.find((candidate) => candidate.getTime() === wanted);
  if (instant) return { instant };
  const spellings = candidates.map((candidate) => toLocalText(candidate, zone)).join(" or ");
  return {
    fault:
      found.kind === "repeated"
        ? `In ${zone} the clocks show ${time} twice that night: write ${spellings}.`
        : `In ${zone} the clocks do not have the offset ${offset} then: write ${spellings}, or no offset.`,
  };
}
