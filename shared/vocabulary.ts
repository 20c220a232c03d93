/** The closed lists of the domain. Each is said once here; schemas, planner results and pages take their kinds from it. */

/** How a section can be fed. A `both` section follows what the session says of its area. */
export const SECTION_WIRINGS = ["analog", "digital", "both"] as const;
/** What runs in an area, or a section, during a session. */
export const CONTROLS = ["analog", "digital"] as const;
/** Whether trains may be together in a digital section. Analog sections always take one train. */
export const SHARINGS = ["one-train", "shared"] as const;
/** What a section is for, in the words of the trade. */
export const SECTION_USES = ["line", "platform road", "loop", "siding", "staging road", "yard"] as const;
/** Where a current figure comes from, surest first. */
export const FIGURE_SOURCES = ["measured", "leaflet", "rule of thumb"] as const;
/** Short (1–127) and long (128–10239) decoder addresses: NMRA S-9.2.1. */
export const ADDRESS_KINDS = ["short", "long"] as const;
/** How a handset reaches the command system: plugged in, by radio, or mounted on one panel. */
export const HANDSET_KINDS = ["tethered", "radio", "fixed"] as const;
export const HANDSET_STATES = ["ready", "faulty", "away"] as const;
/** Plain copper by cross-section and kind (IEC 60228: solid is class 1 and 2, flexible class 5 and 6), or by American gauge. */
export const CONDUCTORS = [
  "0.5 mm2 solid",
  "0.5 mm2 flexible",
  "0.75 mm2 solid",
  "0.75 mm2 flexible",
  "1 mm2 solid",
  "1 mm2 flexible",
  "1.5 mm2 solid",
  "1.5 mm2 flexible",
  "2.5 mm2 solid",
  "2.5 mm2 flexible",
  "4 mm2 solid",
  "4 mm2 flexible",
  "AWG 24",
  "AWG 22",
  "AWG 20",
  "AWG 18",
  "AWG 16",
  "AWG 14",
  "AWG 12",
  "AWG 10",
] as const;
/** Where a locomotive stands in its train. */
export const LOCOMOTIVE_POSITIONS = ["head", "rear"] as const;
/** A draft version may be edited; an issued one is what people hold in their hands, and stays as it is. */
export const TIMETABLE_STATES = ["draft", "issued"] as const;

/** What a person may do in a club; one may hold several. */
export const ROLES = ["secretary", "layout owner", "timetable clerk", "session marshal", "member"] as const;

export const SEVERITIES = ["stops", "warns"] as const;

/** Every finding the check can make, by its stable code. */
export const FINDING_CODES = [
  "section-clash",
  "shared-section-too-full",
  "path-not-linked",
  "path-times-backwards",
  "path-too-fast",
  "path-section-not-fed",
  "path-no-changeover",
  "train-longer-than-road",
  "stock-elsewhere",
  "stock-in-two-trains",
  "output-none-reaches",
  "outputs-too-few",
  "outputs-not-decided",
  "output-over-rating",
  "output-too-close",
  "controller-over-rating",
  "controller-too-close",
  "district-will-trip",
  "district-too-close",
  "supply-over-rating",
  "supply-too-close",
  "handsets-too-few",
  "train-outside-slot",
  "output-trips-on-stall",
  "district-trips-on-stall",
  "district-trips-on-restart",
  "address-refused",
  "address-used-twice",
  "addresses-too-many",
  "handsets-too-many",
  "analog-only-on-digital",
  "decoder-not-for-analog",
  "train-bridges-feeds",
  "return-loop-too-short",
  "handset-none-usable",
  "handsets-do-not-fit",
  "handsets-not-decided",
  "handset-not-ready",
  "handset-out-of-reach",
  "handset-battery-short",
  "member-in-two-places",
  "walk-too-short",
  "driver-not-passed",
  "junior-unsupervised",
  "section-too-busy",
  "district-drop-too-big",
  "district-volts-too-low",
  "district-fault-not-seen",
  "district-test-failed",
  "district-not-tested",
] as const;

export type SectionWiring = (typeof SECTION_WIRINGS)[number];
export type Control = (typeof CONTROLS)[number];
export type Sharing = (typeof SHARINGS)[number];
export type SectionUse = (typeof SECTION_USES)[number];
export type FigureSource = (typeof FIGURE_SOURCES)[number];
export type AddressKind = (typeof ADDRESS_KINDS)[number];
export type HandsetKind = (typeof HANDSET_KINDS)[number];
export type HandsetState = (typeof HANDSET_STATES)[number];
export type LocomotivePosition = (typeof LOCOMOTIVE_POSITIONS)[number];
export type TimetableState = (typeof TIMETABLE_STATES)[number];
export type Role = (typeof ROLES)[number];
export type Conductor = (typeof CONDUCTORS)[number];
export type Severity = (typeof SEVERITIES)[number];
export type FindingCode = (typeof FINDING_CODES)[number];
