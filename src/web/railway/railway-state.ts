import type { District, Line, Link, Place, Section, Selector } from "../../../shared/layout.ts";

/** What the drawing and the answer are made from. */
export interface Railway {
  readonly sections: readonly Section[];
  readonly links: readonly Link[];
  readonly places: readonly Place[];
  readonly districts: readonly District[];
  readonly selectors: readonly Selector[];
  readonly lines: readonly Line[];
}

const MOST_NAMED = 6;

/** Sections that no link joins to another. */
export function unlinked({ sections, links }: Railway): string[] {
  const joined = new Set(links.flatMap(({ from, to }) => [from, to]));
  return sections.filter(({ code }) => !joined.has(code)).map(({ code }) => code);
}

/** Sections that nothing feeds in one of the ways they are wired for. */
export function unfed({ sections, selectors }: Railway): string[] {
  const selected = new Set(selectors.map(({ section }) => section));
  return sections
    .filter(
      ({ code, wiring, district }) =>
        (wiring !== "analog" && district === null) || (wiring !== "digital" && !selected.has(code)),
    )
    .map(({ code }) => code);
}

/** How the railway stands, in a sentence. */
export function sayRailway(railway: Railway): string {
  const { sections, places, districts } = railway;
  if (sections.length === 0) return "There are no sections yet.";
  const loose = unlinked(railway);
  const dark = unfed(railway);
  const wrong = [
    loose.length > 0 && `${named(loose)} ${loose.length === 1 ? "is" : "are"} linked to nothing`,
    dark.length > 0 && `${named(dark)} ${dark.length === 1 ? "is" : "are"} not fed as wired`,
  ].filter((part) => part !== false);
  const size = `${count(sections.length, "section")} at ${count(places.length, "place")} in ${count(districts.length, "power district")}`;
  return wrong.length === 0 ? `${size}; everything is linked and fed.` : `${size}; ${wrong.join(", and ")}.`;
}

const count = (n: number, noun: string) => `${n} ${noun}${n === 1 ? "" : "s"}`;

function named(codes: readonly string[]): string {
  const shown = codes.slice(0, MOST_NAMED).join(", ");
  return codes.length > MOST_NAMED ? `${shown} and ${codes.length - MOST_NAMED} more` : shown;
}
