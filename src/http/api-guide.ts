/** What the reference page says before the first route. CommonMark, as OpenAPI has it. */
export const API_GUIDE = `
Books a model-railway club's operating session and knows beforehand that it will run.

## Who asks

Everything but signing in itself asks who you are. Sign in on the service's pages, make a personal access token under "My account" (for
reading, or for writing too; for one club, or all of yours), and send it along:

    curl -s -H 'authorization: Bearer rf_…' http://127.0.0.1:4380/api/clubs

(Put the address under which you reach the service; this is where it listens unless told otherwise.) A program that signs in by itself
posts to \`/api/sign-in\`, keeps the cookie of the answer and makes its token with \`POST /api/me/tokens\`; a token makes no tokens. The cookie is
for secure connections and for the machine itself, so that some clients do not send it back over plain http: a token always works. What is sent
with the cookie must come from the service's own address: leave \`Origin\` out, or name that address in it. The token is shown once. What you may not see answers as what is not there (404); what your roles in the club do not allow, 403.

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
2. Either \`POST …/import\` brings everything in one document (try \`dryRun=true\` first; \`GET …/export\` of another club shows its form; time zone, scale and policy
   are the club's own and not in it: copy them from \`GET /api/clubs/{club}\`; nor are pictures), or
   the records are made one by one in an order in which what a record names is there already: areas, places, lines, walks,
   command systems, supplies, districts, sections, links, controllers, selectors, short tests; locomotives, decoders, rakes; handsets; members;
   timetables, their versions, the trains of a version; sessions; readings.
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
  slot that is checked; before it they are negative. All intervals are half-open: touching is not overlapping.
- **Unknown fields are refused**, as is everything that cannot be read. A refusal is a problem document (RFC 9457): \`code\` is stable,
  \`detail\` says what to do, \`errors\` names every place by JSON pointer (CSV: row and column). \`GET /problems\` lists all kinds. Beside
  those that a route names, each may answer 421 (a host name the service does not go by), 500 (our mistake) and 503 (no database).
- **Bodies** are JSON in UTF-8 with \`Content-Type: application/json\`; sheets \`text/csv\`.
- **Pictures** are one a locomotive or rake and have no history: a later one takes the place of the one before, without \`If-Match\`.
- **Limits.** A body of 8 MB, 2,000 trains in a plan or timetable version; beyond them 413 or 400 at once.

## How it is reckoned

Enough to work a figure out by hand.

- **Motion.** A train stands at a call with its head at the leaving end of that section, and runs between two timed calls at one steady speed:
  the distance from head to head, over the real time (layout time divided by the clock ratio). It enters a section when its head does, and is clear of it when its
  tail is: a train length past the end. A section is taken from set-up before it is entered to release after it is clear (policy). A limit of speed is
  compared with that steady speed, reckoned back to the prototype by the scale; a section's holds until the tail is clear of it.
- **Standing.** Stock stands where its train departs from since the working that brought it, else since \`placedAt\`, else since the slot's start; where
  it arrived until its next working, \`removedAt\` or the slot's end. Standing, it takes every section that its length covers.
- **Loads.** A locomotive draws its running current while its train moves, else its standing current; on analog track a standing one draws nothing. It
  sits at the head unless marked at the rear, and counts in every district that any part of it is in; a rake's lighting counts in each district that the train covers. A district's
  load is the sum at each instant, a supply's that of its districts and its accessories. One stalled: the load at an instant with one locomotive's stall in place of what it
  draws then, at worst. A restart: the inrush of all that is there at once, of each no less than what it draws.
- **Wires.** Loop resistance is 2 × length × Ω per metre of the conductor (IEC 60228; AWG by its own table) × (1 + 0.00393 × (°C − 20)). The drop is loop resistance × peak;
  at the far end are the supply's volts less the drop; a short there brings volts / (\`sourceOhm\` + loop resistance), which must be the breaker's current times the policy's margin.
- **How busy.** The times for which trains take a section (set-up and release included, stock that only stands there left out), pushed together until
  they touch, over the slot (UIC Code 406).
- **Analog.** A train keeps one output for as long as it moves, on all that it covers, from set-up before each section; at a call of at least the policy's release dwell
  it may change outputs. An area runs analog or digital as the slot says. A section marked \`changeover\`, wired \`both\`, with a district and a selector, lies between: a train
  must call there, fit in it whole, and is changed over while it stands. Its locomotives need decoders that may run on analog.
- **Handsets.** A train needs one from pick-up before its departure to hand-in after its arrival (policy): ready, usable at every place where it calls or passes, and charged
  from its first pick-up of the evening to its last hand-in. What people have claimed stays.
- **Readings.** One of a locomotive names \`locomotive\` and \`state\`; one of a district \`district\`, \`session\`, \`slot\` and \`layoutTime\`. From readings of one locomotive in one state the median
  becomes its figure, with the spread about it.

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
