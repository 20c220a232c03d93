import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { ShortTest } from "../../../shared/short-tests.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

export const shortTestTable: RecordTable<ShortTest, rows.ShortTest> = {
  model: "shortTest",
  toColumns: (test): Omit<Prisma.ShortTestCreateManyInput, KeptColumn> => ({
    districtCode: test.district,
    // a day has no zone; the driver keeps dates as UTC midnight
    testedOn: new Date(`${test.testedOn}T00:00:00Z`),
    testedS: test.testedAt === null ? null : parseLayoutTime(test.testedAt),
    result: test.result,
    testedBy: test.by,
    note: test.note,
  }),
  toBody: (row) => ({
    code: row.code,
    district: row.districtCode,
    testedOn: row.testedOn.toISOString().slice(0, 10),
    testedAt: row.testedS === null ? null : toLayoutTimeText(row.testedS),
    result: row.result as ShortTest["result"],
    by: row.testedBy,
    note: row.note,
  }),
};
