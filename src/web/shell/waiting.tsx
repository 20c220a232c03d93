import { useEffect, useState } from "preact/hooks";

/** Shorter waits show nothing, so that a quick answer does not flicker. */
const QUIET_MS = 400;
/** From here on people wonder whether it still works. */
const LONG_S = 2;

/** Waiting that says so: after 0.4 s something moves, after 2 s it counts and can be stopped. */
export function Waiting({ what, stop }: { readonly what: string; readonly stop: () => void }) {
  const [isShown, setShown] = useState(false);
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const quiet = setTimeout(() => setShown(true), QUIET_MS);
    const tick = setInterval(() => setSeconds((n) => n + 1), 1_000);
    return () => {
      clearTimeout(quiet);
      clearInterval(tick);
    };
  }, []);
  if (!isShown) return <div class="waiting" aria-busy="true" />;
  return (
    <div class="waiting" role="status" aria-busy="true">
      <div class="waiting-track" aria-hidden="true">
        <div class="waiting-train" />
      </div>
      <p>{what} …</p>
      {seconds >= LONG_S && (
        <p>
          <span aria-hidden="true">{seconds} s so far. </span>
          <button type="button" onClick={stop}>
            Stop waiting
          </button>
        </p>
      )}
    </div>
  );
}
