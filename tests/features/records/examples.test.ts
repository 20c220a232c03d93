import { expect, it } from "vitest";
import { TRANSFER_KINDS } from "../../../src/app.ts";
import type { RecordKind } from "../../../src/records/record-kind.ts";

const { layout, roster, ...others } = TRANSFER_KINDS;
const kinds: readonly RecordKind[] = [...layout, ...roster, ...Object.values(others)];
const club = { id: "", code: "north", timeZone: "Europe/London" };

it.each(kinds)("the reference page shows a $one that would be taken", (kind) => {
  const body = kind.schema.parse(kind.example);
  expect(kind.flaws?.(body, club) ?? []).toEqual([]);
});
