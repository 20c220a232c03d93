import { LIMITS } from "../../../shared/limits.ts";
import { type ShortTest, shortTest } from "../../../shared/short-tests.ts";
import { code } from "../../../shared/units.ts";
import { shortTestTable } from "../../database/records/short-tests.ts";
import type { RecordKind } from "../../records/record-kind.ts";

export const shortTestKind: RecordKind<ShortTest> = {
  one: "shortTest",
  many: "shortTests",
  about:
    "A short test says what happened when somebody laid metal across the rails of a district: its breaker must open. The latest counts.",
  schema: shortTest,
  example: { code: "west-2027", district: "D-West", testedOn: "2027-03-13", result: "passed", by: "Ada" },
  table: shortTestTable,
  keep: "keep-layout",
  most: LIMITS.shortTests,
  filters: {
    district: {
      schema: code.meta({ description: "Only those of this district." }),
      where: (districtCode: string) => ({ districtCode }),
    },
  },
  references: ({ district }) => [{ to: "district", code: district, path: ["district"] }],
};
