import { Refusal } from "../../lib/refusal.ts";

export const unknownTimeZone = (zone: string) =>
  `The IANA time zone database has no ${zone}: write a name such as Europe/London.`;

export const forOneClubAlone = () =>
  new Refusal("not-permitted", "This token is good for one club alone, and makes no others.");
