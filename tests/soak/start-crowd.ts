import { fork } from "node:child_process";
import { once } from "node:events";
import path from "node:path";
import type { CrowdPlan, Progress } from "./crowd-plan.ts";

export interface Crowd {
  /** Resolves when this many posts were begun, or all processes have ended. */
  reached(posts: number): Promise<void>;
  /** Resolves when all have made their posts; rejects when a process failed. */
  readonly done: Promise<void>;
  kill(): void;
}

/** Runs each plan in a process of its own. */
export function startCrowd(plans: readonly CrowdPlan[]): Crowd {
  const begun = plans.map(() => 0);
  const waiting = new Set<() => void>();
  const children = plans.map((plan, at) => {
    const child = fork(path.join(import.meta.dirname, "crowd.ts"), [JSON.stringify(plan)], {
      execArgv: ["--import", "tsx"],
    });
    child.on("message", ({ posts }: Progress) => {
      begun[at] = posts;
      for (const look of waiting) look();
    });
    return child;
  });
  const done = Promise.all(
    children.map(async (child) => {
      const [code, signal] = (await once(child, "exit")) as [number | null, string | null];
      if (code !== 0) throw new Error(`a process of the crowd ended with ${code ?? signal}`);
    }),
  ).then(() => {});
  done.catch(() => {}); // whoever awaits it hears of it
  const reached = (posts: number) =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (begun.reduce((sum, one) => sum + one, 0) < posts) return;
        waiting.delete(look);
        resolve();
      };
      waiting.add(look);
      look();
    });
  return {
    reached: (posts) => Promise.race([reached(posts), done]),
    done,
    kill: () => {
      for (const child of children) child.kill("SIGKILL");
    },
  };
}
