import type { z } from "zod";
import type { layoutDocument } from "../../shared/documents.ts";
import { branchSections } from "./branch.ts";
import { links } from "./links.ts";
import { mainLineSections } from "./main-line.ts";
import { areas, lines, places } from "./places.ts";
import { commandSystems, controllers, districts, selectors, shortTests, supplies } from "./power.ts";

export const demoLayout: z.input<typeof layoutDocument> = {
  areas,
  places,
  lines,
  commandSystems,
  supplies,
  districts,
  sections: [...mainLineSections, ...branchSections],
  links,
  controllers,
  selectors,
  shortTests,
};
