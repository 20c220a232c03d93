import type { BoardRow } from "./board-groups.ts";
import { ordinal, titleOf, useCrew } from "./crew.ts";

/** The queue for something that is taken: how long, where one stands, in or out. */
export function Queueing({ it }: { readonly it: BoardRow }) {
  const { join, leave } = useCrew();
  const { queue, mayQueue } = it.row;
  const title = titleOf(it.kind, it.row.code, it.row.name);
  if (queue.place !== null)
    return (
      <div class="crew-do">
        <span class="crew-queue">
          You are {ordinal(queue.place)} of {queue.length} in the queue
        </span>
        <button
          type="button"
          class="big-button"
          aria-label={`Leave the queue for ${title}`}
          onClick={() => leave(it)}
        >
          Leave
        </button>
      </div>
    );
  if (!mayQueue) return null;
  return (
    <div class="crew-do">
      <span class="crew-queue">
        {queue.length === 0 ? "Nobody waits for it" : `${queue.length} in the queue`}
      </span>
      <button type="button" class="big-button" aria-label={`Queue for ${title}`} onClick={() => join(it)}>
        Queue
      </button>
    </div>
  );
}
