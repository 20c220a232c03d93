import { demoClub } from "./club.ts";
import { members } from "./members.ts";
import { demoPeople } from "./people.ts";
import { CLEAN } from "./sessions.ts";

/** Sends a request to the service's own API, and gives back what it answered. */
export type Ask = (
  method: "GET" | "POST" | "PUT",
  url: string,
  body?: object,
  headers?: Readonly<Record<string, string>>,
) => Promise<{ readonly status: number; readonly body: unknown; readonly cookie: string | undefined }>;

interface BoardTrain {
  readonly code: string;
  readonly requires: readonly string[];
  readonly claim: object | null;
}

/** Who has claimed something already, in each crew: the rest is left for whoever looks around. */
const CLAIMANTS = ["qb", "jp", "vn", "dc", "it", "mh"];

const DUTIES = [
  {
    code: "signals",
    kind: "signalling",
    name: "Signals, Vennagate Junction",
    place: "VENN",
    requires: ["panel"],
  },
  { code: "yard", kind: "yard", name: "Hesperwick yard", place: "YARD", requires: ["yard"] },
  { code: "marshal", kind: "marshal", name: "Session marshal" },
];

const night = `/api/clubs/${demoClub.code}/sessions/${CLEAN.session}`;

/** Opens the demo's night for claims as its secretary would, and lets some members claim. */
export async function openDemoNight(ask: Ask): Promise<void> {
  const [secretary] = demoPeople;
  const { cookie } = await expectDone(
    ask("POST", "/api/sign-in", { email: secretary?.email, password: secretary?.password }),
  );
  const headers = { cookie: cookie ?? "" };
  for (const slot of ["first", "second"])
    for (const duty of DUTIES) await expectDone(ask("POST", `${night}/slots/${slot}/duties`, duty, headers));
  await expectDone(ask("POST", `${night}/booking/moves`, { to: "open" }, { ...headers, "if-match": "*" }));
  for (const slot of ["first", "second"])
    for (const member of CLAIMANTS) await claimFirst(ask, `${night}/slots/${slot}`, member, headers);
  await expectDone(ask("POST", "/api/sign-out", {}, headers));
}

/** The first train that the member may have. */
async function claimFirst(ask: Ask, slot: string, member: string, headers: Readonly<Record<string, string>>) {
  const { body } = await expectDone(ask("GET", `${slot}/board`, undefined, headers));
  const passedFor = new Set(members.find(({ code }) => code === member)?.passedFor);
  for (const { code, requires, claim } of (body as { trains: readonly BoardTrain[] }).trains) {
    if (claim !== null || requires.some((tag) => !passedFor.has(tag))) continue;
    const { status } = await ask("POST", `${slot}/claims`, { train: code, member }, headers);
    if (status === 201) return;
  }
}

async function expectDone(asked: ReturnType<Ask>) {
  const answer = await asked;
  if (answer.status >= 400)
    throw new Error(`the demo's night was not opened: ${JSON.stringify(answer.body)}`);
  return answer;
}
