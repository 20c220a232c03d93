import type { z } from "zod";
import type { link } from "../../shared/layout.ts";

type Link = z.input<typeof link>;

/** `A B > C D`: from each on the left to each on the right; `<>` both ways. */
const JOINS = [
  "W1 W2 W3 W4 W5 W6 > DW1",
  "DW1 > DW2",
  "DW2 > H1 H3 HY1 HY2",
  "H2 H3 HY1 HY2 > UW1",
  "UW1 > UW2",
  "UW2 > W1 W2 W3 W4 W5 W6",
  "HY1 <> HY2",
  "HY1 HY2 <> HD",
  "HD <> H3 H4",
  "H1 H3 H4 HY1 HY2 > DJ1",
  "DJ1 > DJ2",
  "DJ2 > V1 V3 V4",
  "V2 V3 V4 > UJ1",
  "UJ1 > UJ2",
  "UJ2 > H2 H3 H4 HY1 HY2",
  "V1 > SL1",
  "SL1 > V2",
  "V4 <> SL1",
  "SL1 <> SL2",
  "SL2 <> P1 P2 PX",
  "P1 P2 PX <> SL3",
  "SL3 <> SL4",
  "SL4 <> E1 E2 E3 E4 E5 E6",
  "V3 V5 <> B1",
  "B1 <> LM1 LM2",
  "LM1 LM2 <> B2",
  "B2 <> B3",
  "B3 <> M1 M2 MG",
  "M1 M2 MG <> B4",
  "B4 <> B5",
  "B5 <> T1 T2 T3 TQ",
];

export const links: Link[] = JOINS.flatMap((join) => {
  const [left = "", right = ""] = join.split(/ <?> /);
  const oneWay = !join.includes("<");
  return left
    .split(" ")
    .flatMap((from) => right.split(" ").map((to) => ({ code: `${from}-${to}`, from, to, oneWay })));
});
