import type { z } from "zod";
import type { member } from "../shared/members.ts";

type Member = z.input<typeof member>;

const MAIN = "main line";
const BRANCH = "branch";
const YARD = "yard";
const PANEL = "panel";

function person(code: string, name: string, passedFor: string[], more: Partial<Member> = {}): Member {
  return { code, name, passedFor, ...more };
}

/** Sixteen invented people. */
export const members: Member[] = [
  person("fd", "Fenella Dunnaby", [MAIN, BRANCH, YARD, PANEL], { roles: ["layout owner"] }),
  person("it", "Ivo Thackermere", [BRANCH, PANEL]),
  person("os", "Orsolya Sallowfield", [MAIN, BRANCH, PANEL], { roles: ["secretary"] }),
  person("qb", "Quentric Balmoss", [MAIN, YARD]),
  person("mh", "Merrial Hathersedge", [MAIN]),
  person("tw", "Tamsin Wrexhollow", [MAIN, BRANCH, YARD], { roles: ["timetable clerk"] }),
  person("jp", "Jorvald Pinnerton", [MAIN, YARD]),
  person("ak", "Anthea Kilverstoke", [BRANCH, PANEL]),
  person("rl", "Rufio Larchwater", [MAIN, BRANCH]),
  person("es", "Esmond Sprakeling", [YARD]),
  person("vn", "Viveca Nettlebourne", [MAIN, BRANCH]),
  person("dc", "Dorian Cragwell-Toye", [MAIN, YARD, PANEL]),
  person("hb", "Hespera Buntingale", [BRANCH]),
  person("gm", "Godric Mothersole-Vane", [MAIN, BRANCH, YARD, PANEL], { roles: ["session marshal"] }),
  person("pl", "Pip Larchwater", [BRANCH], { junior: true, note: "With Rufio Larchwater." }),
  person("zn", "Zinnia Nettlebourne", [MAIN], { junior: true, note: "With Viveca Nettlebourne." }),
];
