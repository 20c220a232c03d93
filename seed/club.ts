import { type Club, club } from "../shared/clubs.ts";

/** The invented club: its members, its railway and every place on it exist only here. */
export const demoClub: Club = club.parse({
  code: "quennelby",
  name: "Quennelby Model Railway Circle",
  timeZone: "Europe/London",
  scale: 87,
  policy: {},
  note: "An invented club. Its H0 railway, Hesperwick and Tolver Quay, fills the loft over the old seed store.",
});
