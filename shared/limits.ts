/** Most things of a kind that one club document or plan may hold. Beyond them a request is refused at once, with the figure. */
export const LIMITS = {
  trains: 2_000,
  pathEntries: 200,
  /** Path entries of all trains of one check together. */
  checkedPathEntries: 50_000,
  sections: 2_000,
  links: 6_000,
  places: 500,
  lines: 50,
  areas: 50,
  supplies: 100,
  districts: 300,
  controllers: 50,
  outputsPerController: 12,
  selectors: 2_000,
  commandSystems: 20,
  locomotives: 3_000,
  decoders: 3_000,
  rakes: 3_000,
  handsets: 500,
  members: 2_000,
  timetables: 200,
  versions: 100,
  sessions: 1_000,
  slots: 12,
  /** Bytes of a request body. */
  bodyBytes: 8 * 1024 * 1024,
} as const;
