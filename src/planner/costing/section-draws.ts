import type { Plan } from "../compile-plan.ts";
import { createLoadScene, type LoadScene } from "../load/digital-load.ts";
import type { Moves } from "../load/moves.ts";
import { findMoves } from "../load/moves.ts";
import { findPresence } from "../load/presence.ts";
import { findStretches } from "../load/stretches.ts";

/**
 * What is drawn where, in pieces: in each piece one locomotive or rake draws `drawsMa`, above 0, from instant number `from` to
 * before number `to`, and is in the same sections all the while.
 */
export interface SectionDraws {
  /** How many different instants there are, all pieces together. */
  readonly instants: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly drawsMa: Int32Array;
  /** Pieces in which something draws from a section, each once; by section. */
  readonly bySection: readonly (readonly number[])[];
}

/**
 * What every section feeds. Whatever sections are put together, what they feed together is the sum of the pieces of any of
 * them, each once: a train over a joint of two is in one piece of both. Before: every section of the plan is a district of its
 * own, and nothing is of length 0, so that it is in the next section before it has left the last. Nothing before the slot's
 * start. Cost: items × sections that each is in at once, and sorting instants.
 */
export function drawsOfSections(plan: Plan): SectionDraws {
  const scene = createLoadScene(plan);
  const pieces: Pieces = {
    fromMs: [],
    toMs: [],
    drawsMa: [],
    bySection: plan.problem.sections.map(() => []),
  };
  for (let train = 0; train < plan.motions.timed.length; train++) {
    if (plan.motions.timed[train] === 0) continue;
    findStretches(scene.stretches, plan.motions, plan.parts, plan.track.district, train);
    findMoves(scene.moves, plan.motions, train);
    const end = plan.stock.firstItem[train + 1] as number;
    for (let item = plan.stock.firstItem[train] as number; item < end; item++) {
      findPresence(scene.presence, plan.motions, scene.stretches, plan.stock, item);
      addItem(scene, item, pieces);
    }
  }
  const instants = Int32Array.from(new Set([...pieces.fromMs, ...pieces.toMs])).sort();
  const numbered = new Map(Array.from(instants, (ms, number) => [ms, number] as const));
  const toNumber = (ms: number) => numbered.get(ms) as number;
  return {
    instants: instants.length,
    from: Int32Array.from(pieces.fromMs, toNumber),
    to: Int32Array.from(pieces.toMs, toNumber),
    drawsMa: Int32Array.from(pieces.drawsMa),
    bySection: pieces.bySection,
  };
}

interface Pieces {
  readonly fromMs: number[];
  readonly toMs: number[];
  readonly drawsMa: number[];
  readonly bySection: number[][];
}

/** Cuts the item's time wherever it comes into a section, leaves one, stops or goes on. */
function addItem({ presence, moves, stock, problem }: LoadScene, item: number, pieces: Pieces): void {
  const runningMa = stock.runningMa[item] as number;
  const standingMa = stock.standingMa[item] as number;
  if (presence.count === 0 || (runningMa === 0 && standingMa === 0)) return;
  const { startMs } = problem.slot;
  const cuts = new Set<number>();
  for (let i = 0; i < presence.count; i++)
    cuts.add(Math.max(startMs, presence.fromMs[i] as number)).add(presence.toMs[i] as number);
  for (let i = 0; i < moves.count; i++)
    cuts.add(Math.max(startMs, moves.fromMs[i] as number)).add(Math.max(startMs, moves.toMs[i] as number));
  const at = [...cuts].sort((a, b) => a - b);
  const position = new Map(at.map((ms, i) => [ms, i]));
  // by place in time, its piece once it has one
  const pieceAt = new Int32Array(at.length).fill(-1);
  const draws = at.map((ms) => (isMoving(moves, ms) ? runningMa : standingMa));
  for (let i = 0; i < presence.count; i++) {
    const from = Math.max(startMs, presence.fromMs[i] as number);
    const until = presence.toMs[i] as number;
    const here = pieces.bySection[presence.district[i] as number] as number[];
    for (let cut = position.get(from) as number; (at[cut] as number) < until; cut++) {
      if (draws[cut] === 0) continue;
      if (pieceAt[cut] === -1) {
        pieceAt[cut] = pieces.fromMs.length;
        pieces.fromMs.push(at[cut] as number);
        pieces.toMs.push(at[cut + 1] as number);
        pieces.drawsMa.push(draws[cut] as number);
      }
      here.push(pieceAt[cut] as number);
    }
  }
}

function isMoving({ count, fromMs, toMs }: Moves, ms: number): boolean {
  let move = 0;
  while (move < count && (toMs[move] as number) <= ms) move++;
  return move < count && (fromMs[move] as number) <= ms;
}
