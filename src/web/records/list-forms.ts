import type { ListForm } from "./fields.ts";

const parts = (text: string) =>
  text
    .split(";")
    .map((part) => part.trim())
    .filter((part) => part !== "");

interface Output {
  readonly code: string;
  readonly name: string;
  readonly ratingMa: number;
}

/** Controller outputs: code, rating in mA, name. */
export const OUTPUTS: ListForm = {
  example: "A 1000 Left knob; B 1000 Right knob",
  write: (list) =>
    (list as readonly Output[]).map(({ code, name, ratingMa }) => `${code} ${ratingMa} ${name}`).join("; "),
  read(text) {
    const outputs: Output[] = [];
    for (const part of parts(text)) {
      const [, code, ma, name] = /^(\S+)\s+(\d+)(?:\s+(.+))?$/.exec(part) ?? [];
      if (code === undefined || Number(ma) < 1)
        return `Write each output as its code, what it can give in mA and its name: ${OUTPUTS.example}.`;
      outputs.push({ code, name: name ?? code, ratingMa: Number(ma) });
    }
    return outputs.length > 0 ? outputs : `Name one output at least: ${OUTPUTS.example}.`;
  },
};

interface Stop {
  readonly place: string;
  readonly atMm: number;
}

/** Places along a line, each with its distance from the line's zero in mm. */
export const STOPS: ListForm = {
  example: "west 0; mid 4800; east 10800",
  write: (list) => (list as readonly Stop[]).map(({ place, atMm }) => `${place} ${atMm}`).join("; "),
  read(text) {
    const stops: Stop[] = [];
    for (const part of parts(text)) {
      const [, place, at] = /^(\S+)\s+(\d+)$/.exec(part) ?? [];
      if (place === undefined)
        return `Write each place with its distance in mm from the line's zero: ${STOPS.example}.`;
      stops.push({ place, atMm: Number(at) });
    }
    return stops.length > 1 ? stops : `Name two places at least: ${STOPS.example}.`;
  },
};
