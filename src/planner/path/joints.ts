import type { Link } from "../problem.ts";

/** Which sections join, as one bit a pair: of `from` and `to` bit `from × sections + to`. */
export interface Joints {
  readonly sections: number;
  readonly bits: Uint32Array;
}

/** For many questions at once. Cost: links, and a bit for each pair of sections: 500 kB for 2,000 sections. */
export function tabulateJoints(sections: number, links: readonly Link[]): Joints {
  const joints = { sections, bits: new Uint32Array(Math.ceil((sections * sections) / 32)) };
  for (let i = 0; i < links.length; i++) {
    const { from, to, oneWay } = links[i] as Link;
    join(joints, from, to);
    if (!oneWay) join(joints, to, from);
  }
  return joints;
}

function join({ sections, bits }: Joints, from: number, to: number): void {
  const pair = from * sections + to;
  bits[pair >>> 5] = (bits[pair >>> 5] as number) | (1 << (pair & 31));
}

/** Whether a path may go from one straight to the other; the same section named again is a reversal. */
export function canFollow({ sections, bits }: Joints, from: number, to: number): boolean {
  const pair = from * sections + to;
  return from === to || (((bits[pair >>> 5] as number) >>> (pair & 31)) & 1) === 1;
}
