import type { Area, Line, Link, Place, Section } from "../../../shared/layout.ts";
import { area, line, link, place, section } from "../../../shared/layout.ts";
import { LIMITS } from "../../../shared/limits.ts";
import { code } from "../../../shared/units.ts";
import { areaTable, lineTable, linkTable, placeTable, sectionTable } from "../../database/records/track.ts";
import type { RecordKind, Reference } from "../../records/record-kind.ts";
import { CHANGEOVER_NEEDS_BOTH, HALF_A_POSITION, joinsItself } from "./errors.ts";

export const areaKind: RecordKind<Area> = {
  one: "area",
  many: "areas",
  about: "An area is a part of the railway that a session runs analog or digital as one.",
  schema: area,
  example: { code: "main", name: "Main line" },
  table: areaTable,
  keep: "keep-layout",
  most: LIMITS.areas,
  used: "area",
};

export const placeKind: RecordKind<Place> = {
  one: "place",
  many: "places",
  about: "A place is a timing point: a station, junction or staging yard.",
  schema: place,
  example: { code: "west", name: "West yard", xMm: 500, yMm: 2_000 },
  table: placeTable,
  keep: "keep-layout",
  most: LIMITS.places,
  used: "place",
  flaws: ({ xMm, yMm }) =>
    (xMm === null) === (yMm === null)
      ? []
      : [{ path: [xMm === null ? "xMm" : "yMm"], detail: HALF_A_POSITION }],
};

export const lineKind: RecordKind<Line> = {
  one: "line",
  many: "lines",
  about: "A line lists its places with their distance: the upright axis of a train graph.",
  schema: line,
  example: {
    code: "main",
    name: "Main line",
    stops: [
      { place: "west", atMm: 0 },
      { place: "east", atMm: 12_400 },
    ],
  },
  table: lineTable,
  keep: "keep-layout",
  most: LIMITS.lines,
  references: (body) =>
    body.stops.map(
      ({ place: stop }, at): Reference => ({ to: "place", code: stop, path: ["stops", at, "place"] }),
    ),
};

export const sectionKind: RecordKind<Section> = {
  one: "section",
  many: "sections",
  about: "A section is a length of track that is fed, occupied and passed as one.",
  schema: section,
  example: {
    code: "W1",
    name: "West yard, road 1",
    area: "main",
    place: "west",
    use: "staging road",
    lengthMm: 2_400,
    wiring: "digital",
    district: "D-West",
    handStaging: true,
  },
  table: sectionTable,
  keep: "keep-layout",
  most: LIMITS.sections,
  used: "section",
  filters: {
    area: {
      schema: code.meta({ description: "Only those of this area." }),
      where: (areaCode: string) => ({ areaCode }),
    },
    district: {
      schema: code.meta({ description: "Only those that this power district feeds." }),
      where: (districtCode: string) => ({ districtCode }),
    },
    place: {
      schema: code.meta({ description: "Only those at this place." }),
      where: (placeCode: string) => ({ placeCode }),
    },
  },
  references: (body) => {
    const references: Reference[] = [{ to: "area", code: body.area, path: ["area"] }];
    if (body.place !== null) references.push({ to: "place", code: body.place, path: ["place"] });
    if (body.district !== null) references.push({ to: "district", code: body.district, path: ["district"] });
    return references;
  },
  flaws: (body) =>
    body.changeover && body.wiring !== "both"
      ? [{ path: ["changeover"], detail: CHANGEOVER_NEEDS_BOTH }]
      : [],
};

export const linkKind: RecordKind<Link> = {
  one: "link",
  many: "links",
  about: "A link says that two sections join, so that a train passes from one to the other.",
  schema: link,
  example: { code: "W1-L1", from: "W1", to: "L1" },
  table: linkTable,
  keep: "keep-layout",
  most: LIMITS.links,
  filters: {
    section: {
      schema: code.meta({ description: "Only those from or to this section." }),
      where: (section: string) => ({ OR: [{ fromCode: section }, { toCode: section }] }),
    },
  },
  references: (body) => [
    { to: "section", code: body.from, path: ["from"] },
    { to: "section", code: body.to, path: ["to"] },
  ],
  flaws: (body) => (body.from === body.to ? [{ path: ["to"], detail: joinsItself(body.from) }] : []),
};
