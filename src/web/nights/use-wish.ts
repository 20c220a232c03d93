import { useEffect, useState } from "preact/hooks";

/**
 * What a control shows: what was chosen, until the record says so too or says something else; refused, the record.
 */
export function useWish<T>(recorded: T) {
  const [wish, setWish] = useState<{ readonly value: T } | null>(null);
  useEffect(() => setWish(null), [recorded]);
  return {
    shown: wish ? wish.value : recorded,
    /** Shows `value` while `ask` is under way; it answers whether it was done. */
    async set(value: T, ask: () => Promise<boolean>): Promise<void> {
      setWish({ value });
      if (!(await ask())) setWish(null);
    },
  };
}
