import { useState } from "preact/hooks";
import type { Problem } from "../api/problem.ts";
import type { Done } from "./said.tsx";
import type { Current } from "./use-current.ts";
import { type Deed, useDeed } from "./use-deed.ts";

/** A change, and what to say of it. */
export interface NamedDeed {
  /** The same for the same press repeated: what is changed, and into what. */
  readonly name: string;
  readonly deed: Deed;
  readonly done: string;
  readonly undo?: (() => void) | undefined;
}

/** The changes of a page that shows `current`: one at a time, each told of, each followed by a fresh look. */
export interface Deeds {
  readonly isBusy: boolean;
  /** Name of the one under way, or of the one refused last. */
  readonly about: string | null;
  readonly done: Done | null;
  readonly refused: Problem | null;
  readonly run: (deed: NamedDeed) => Promise<boolean>;
  readonly forget: () => void;
}

export function useDeeds(current: Pick<Current<unknown>, "refresh">): Deeds {
  const doing = useDeed();
  const [done, setDone] = useState<Done | null>(null);
  const run = async ({ name, deed, done: text, undo }: NamedDeed) => {
    const isDone = await doing.run(name, deed);
    if (isDone) setDone({ text, undo });
    // refused, it was drawn from something that is no longer so
    current.refresh();
    return isDone;
  };
  const forget = () => {
    setDone(null);
    doing.forget();
  };
  return {
    isBusy: doing.busy !== null,
    about: doing.busy ?? doing.refused?.name ?? null,
    done,
    refused: doing.refused?.problem ?? null,
    run,
    forget,
  };
}
