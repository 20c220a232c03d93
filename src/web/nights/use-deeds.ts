import { useState } from "preact/hooks";
import type { Problem } from "../api/problem.ts";
import type { Done } from "./said.tsx";
import type { Current } from "./use-current.ts";
import { useDeed } from "./use-deed.ts";

/** A change, and what to say of it. */
export interface NamedDeed<T> {
  /** The same for the same press repeated: what is changed, and into what. */
  readonly name: string;
  /** `key` is sent as Idempotency-Key. */
  readonly deed: (key: string) => Promise<T>;
  readonly tell: (answer: T) => Done;
}

/** The changes of a page that shows `current`: one at a time, each told of, each followed by a fresh look. */
export interface Deeds {
  readonly isBusy: boolean;
  /** Name of the one under way, or of the one refused last. */
  readonly about: string | null;
  readonly done: Done | null;
  readonly refused: Problem | null;
  readonly run: <T>(deed: NamedDeed<T>) => Promise<boolean>;
  readonly forget: () => void;
}

export function useDeeds(current: Pick<Current<unknown>, "refresh">): Deeds {
  const doing = useDeed();
  const [done, setDone] = useState<Done | null>(null);
  const run = async <T>({ name, deed, tell }: NamedDeed<T>) => {
    const isDone = await doing.run(name, async (key) => setDone(tell(await deed(key))));
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
