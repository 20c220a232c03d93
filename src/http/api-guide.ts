/** What the reference page says before the first route. CommonMark, as OpenAPI has it. */
export const API_GUIDE = `
Books a model-railway club's operating session and knows beforehand that it will run.

## Who asks

Everything but signing in itself asks who you are. Sign in on the service's pages, make a personal access token under "My account" (for
reading, or for writing too; for one club, or all of yours), and send it along:

    curl -s -H 'authorization: Bearer rf_…' http://127.0.0.1:4380/api/clubs

The token is shown once. What you may not see answers as what is not there (404); what your roles in the club do not allow, 403.

## The first check in one request

Post a whole plan to \`POST /api/check\`. Its example is complete: send it as it is, then change it into your own. Nothing is
stored. From a shell, with the example in \`plan.json\`:

    curl -s -H 'authorization: Bearer rf_…' -H 'content-type: application/json' --data-binary @plan.json http://127.0.0.1:4380/api/check

The answer's \`verdict\` is \`runs\` or \`stopped\`; \`findings\` say in a sentence each what stops it, when, by how much and
what would cure it; the rest is the evidence: curves, occupations, needs.

A finding, shortened:

    { "code": "section-clash", "severity": "stops",
      "sentence": "Trains 1A03 and 2S04 both need section SL2 from 08:32:10 to 08:34:36.",
      "cure": "Move one of them until the other is clear, or send it over another road.",
      "span": { "startMs": 1682500, "endMs": 1719071, "layoutStart": "08:32:10", "layoutEnd": "08:34:36" },
      "trains": ["1A03", "2S04"], "sections": ["SL2"], "measured": 2, "limit": 1, "unit": "trains" }

## A club's own records

1. \`POST /api/clubs\` makes a club with its time zone and scale.
2. Either \`POST …/import\` brings everything in one document (try \`dryRun=true\` first; \`GET …/export\` of another club shows its form), or
   the records are made one by one in an order in which what a record names is there already: areas, places, lines,
   command systems, supplies, districts, sections, links, controllers, selectors; locomotives, decoders, rakes; handsets; members;
   timetables, their versions, the trains of a version; sessions.
3. \`POST …/sessions/{session}/slots/{slot}/check\` checks a night as it is stored now.

## Conventions

- **Codes.** A record is known by its code, unique among its kind in a club; records refer to each other by code. Changing a code
  renames the record, and every reference follows. Capitals count: \`w1\` is another section than \`W1\`.
- **Changes.** Every answer with a record has an \`ETag\`. A change or removal sends it back as \`If-Match\`: without it 428, after somebody
  else's change 412, and nothing is lost. The body is the whole record without \`version\` and \`updatedAt\`, which the service keeps;
  a part of a record alone can't be sent.
- **Lists** come in pages of 50 unless \`limit\` says otherwise: send \`next\` as \`cursor\` for the one that follows, until it is null.
- **Units.** Lengths mm, currents mA, both whole; prototype speeds km/h. Policies are seconds of real time.
- **Times.** Layout times as \`19:35\` or \`19:35:30\`, after midnight \`25:10\` or \`1:10+1\`. Wall-clock times in the club's zone as
  \`2027-03-27T19:00\`; the offset is needed only for an hour that comes twice. In a report, ms count real time from the start of the
  session. All intervals are half-open: touching is not overlapping.
- **Unknown fields are refused**, as is everything that cannot be read. A refusal is a problem document (RFC 9457): \`code\` is stable,
  \`detail\` says what to do, \`errors\` names every place by JSON pointer (CSV: row and column). \`GET /problems\` lists all kinds. Beside
  those that a route names, each may answer 421 (a host name the service does not go by), 500 (our mistake) and 503 (no database).
- **Bodies** are JSON in UTF-8 with \`Content-Type: application/json\`; sheets \`text/csv\`.
- **Limits.** A body of 8 MB, 2,000 trains in a plan or timetable version; beyond them 413 or 400 at once.

## What a check looks at, and what it does not yet

Paths and their times, sections, clashes and how busy each section is; stock, and whether it suits the track; loads of districts, supplies,
outputs and transformers, one locomotive stalled, everything coming up at once after a trip; wires and short tests; decoder addresses; handsets
against those that are ready and those that a system takes; controller outputs. Recorded but **not yet looked at** by the check: where a handset
can be used, and its battery; members and what a train requires (claims look at these); tolerances and priorities. A night that \`runs\`
may still fail on those.

The planner advises; it certifies nothing, and a measured current beats a computed one. Leave mains wiring, transformers and earthing to a
qualified person under local rules.
`.trim();

/** The groups of routes in the order in which one needs them. */
export const API_TAGS = [
  { name: "check", description: "Does a night run? Of a stored slot, or of a plan posted whole." },
  { name: "wiring", description: "Whether the districts are wired for what their trains draw." },
  { name: "costing", description: "Analog or digital: one timetable costed both ways." },
  { name: "what-if", description: "What would be, were trains or records other than they are." },
  {
    name: "accounts",
    description: "Who asks: signing in and out, one's own account, tokens for scripts, links that work once.",
  },
  {
    name: "clubs",
    description: "The clubs that this service keeps, each with its scale, time zone and policy.",
  },
  { name: "layout", description: "The railway: areas, places, lines, sections, links, and what feeds them." },
  {
    name: "roster",
    description: "Locomotives, decoders and rakes, with where each current figure comes from.",
  },
  { name: "handsets", description: "What drivers hold." },
  { name: "members", description: "Who drives, and what they are passed for." },
  { name: "timetables", description: "Timetables in versions, and the trains of each version." },
  { name: "sessions", description: "Nights: slots, clock ratio, and which areas run analog or digital." },
  {
    name: "readings",
    description: "What meters showed, what follows for the roster, and how far plans were off.",
  },
  {
    name: "booking",
    description: "How far a night has come: notes, who comes, duties, opening it for claims.",
  },
  {
    name: "claims",
    description: "Who drives what with which handset: the claim board, queues, swaps, assignments, fairness.",
  },
  {
    name: "night",
    description: "A night while it is run: layout clock, people, handsets, trains, and what goes wrong.",
  },
  { name: "calendar", description: "Nights and one's own turns for calendar programs (RFC 5545)." },
  { name: "mails", description: "What became of the club's mails." },
  { name: "trail", description: "Who changed what, when, from what to what." },
  { name: "events", description: "Changes as they happen, for pages that stay fresh." },
  {
    name: "transfer",
    description: "Records out and in, as one JSON document or as CSV; an import is all or nothing.",
  },
  { name: "service", description: "Whether it runs, and what its problems mean." },
] as const;
