import type { Decoder } from "../../../../shared/roster.ts";

type Address = Pick<Decoder, "addressKind" | "address">;

/** Short addresses are 1 to 127, long ones 128 to 10239 (NMRA S-9.2.1); a letter says which where a number could be both. */
export function readAddress(text: string): Address | { readonly fault: string } {
  const [, before = "", digits = "", after = ""] = /^([sl]?)\s*(\d+)\s*([sl]?)$/i.exec(text) ?? [];
  const address = Number(digits);
  const letter = (before || after).toLowerCase();
  const isLong = letter === "l" || (letter === "" && address > 127);
  if (digits === "" || address < 1 || address > 10_239)
    return {
      fault: `${text} is no decoder address: write 1 to 10239, or leave it blank where there is no decoder.`,
    };
  if (isLong && address < 128) return { fault: `A long address is 128 or more: ${text} is not.` };
  if (!isLong && address > 127) return { fault: `A short address is 127 at most: ${text} is more.` };
  return { addressKind: isLong ? "long" : "short", address };
}

/** The decoder that a locomotive has, answering to this address; a new one where it has none. */
export const toDecoder = (
  locomotive: string,
  { addressKind, address }: Address,
  fitted: Decoder | undefined,
  code: string,
): Decoder =>
  fitted
    ? { ...fitted, addressKind, address }
    : { code, locomotive, addressKind, address, analogAllowed: false, note: "" };
