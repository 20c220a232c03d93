import { z } from "zod";
import type { RosterDocument } from "../../../../shared/documents.ts";
import type { Fault } from "../../../../shared/errors.ts";
import type { MappedResult, RosterMapping, SuggestedMapping } from "../../../../shared/mapped-import.ts";
import { decoder, locomotive } from "../../../../shared/roster.ts";
import { readRoster } from "../../../database/records/read-plan.ts";
import { clubScope } from "../../../database/records/record-table.ts";
import { faultSentence } from "../../../http/fault-sentence.ts";
import type { Flaw } from "../../../records/flaws.ts";
import { cellFault } from "../csv/errors.ts";
import { readSheet } from "../csv/sheet.ts";
import { MOST_FAULTS, notImported } from "../errors.ts";
import type { TransferService } from "../service.ts";
import { type MappedRoster, mapRoster, type StoredRoster } from "./map-roster.ts";
import { suggestMapping } from "./suggest.ts";

/** Records that an answer shows. */
const MOST_SHOWN = 100;

export type MappedService = ReturnType<typeof createMappedService>;

export function createMappedService(transfer: Pick<TransferService, "importComposed">) {
  return {
    /** @throws Refusal validation-failed where it is no CSV */
    suggest: (text: string): SuggestedMapping => suggestMapping(readSheet(text, delimiterOf(text))),

    /**
     * Makes and changes locomotives, and their decoders, from a sheet with columns of its own. All or nothing.
     * @throws Refusal not-found; unprocessable with row and column of every cell that will not do
     */
    async bringIn(
      club: string,
      text: string,
      mapping: RosterMapping,
      dryRun: boolean,
    ): Promise<MappedResult> {
      const sheet = readSheet(text, delimiterOf(text));
      const { result, composed } = await transfer.importComposed(
        club,
        async (transaction, scope) => {
          const mapped = mapRoster(sheet, mapping, toStored(await readRoster(transaction, clubScope(scope))));
          refuse([...mapped.faults, ...findMisfits(mapped)]);
          const { locomotives, decoders } = mapped;
          const roster = { locomotives: [...locomotives], decoders: [...decoders], rakes: [] };
          return {
            document: { roster },
            kept: mapped.kept,
            locate: (flaws: readonly Flaw[]) => flaws.map((flaw) => locate(mapped, flaw)),
          };
        },
        { dryRun },
      );
      const { roster } = composed.document;
      return {
        ...result,
        counts: result.counts.filter(({ kind }) => kind !== "rakes"),
        locomotives: roster.locomotives.slice(0, MOST_SHOWN),
        decoders: roster.decoders.slice(0, MOST_SHOWN),
        kept: [...composed.kept],
      };
    },
  };
}

const toStored = ({ locomotives, decoders }: RosterDocument): StoredRoster => ({
  locomotives: new Map(locomotives.map((one) => [one.code, one])),
  decoders: new Map(
    decoders.flatMap((one) => (one.locomotive === null ? [] : [[one.locomotive, one] as const])),
  ),
  decoderCodes: new Set(decoders.map(({ code }) => code)),
});

function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw notImported(faults.length, faults.slice(0, MOST_FAULTS));
}

/** What reads well and is no locomotive or decoder all the same. */
function findMisfits(mapped: MappedRoster): Fault[] {
  if (mapped.faults.length > 0) return [];
  const of = (schema: z.ZodType, records: readonly object[], list: "locomotives" | "decoders") => {
    const { error } = z.array(schema).safeParse(records, { error: faultSentence });
    return (error?.issues ?? []).map(({ path, message }) =>
      locate(mapped, { path: ["roster", list, ...(path as (string | number)[])], detail: message }),
    );
  };
  return [...of(locomotive, mapped.locomotives, "locomotives"), ...of(decoder, mapped.decoders, "decoders")];
}

/** A place in the document as a place in the sheet: `roster`, list, position, field. */
function locate({ origins, decoderOrigins }: MappedRoster, { path, detail }: Flaw): Fault {
  const [, list, at, field] = path;
  const origin = (list === "decoders" ? decoderOrigins : origins)[Number(at)];
  const known = list === "decoders" && field !== "address" ? "code" : String(field ?? "code");
  return cellFault(origin?.row ?? 1, origin?.columns[known] ?? origin?.columns.code, detail);
}

/** What separates the cells of the heading: the mark that stands in it most often. */
function delimiterOf(text: string): string {
  const [heading = ""] = text.split(/\r\n|\n|\r/, 1);
  const count = (mark: string) => heading.split(mark).length;
  return [",", ";", "\t"].reduce((most, mark) => (count(mark) > count(most) ? mark : most));
}
