import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { useLooking } from "./stage.ts";

interface PictureProps {
  /** Of the element, so that an address can lead to it. */
  readonly id: string;
  /** What the picture shows, as a statement. */
  readonly heading: string;
  /** What holds at the moment. */
  readonly now: (ms: number) => string;
  readonly note?: ComponentChildren;
  readonly isConcerned?: boolean;
  readonly table: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A picture with its statement, what holds at the moment, the same as a table, and a link to this very view. */
export function Picture({ id, heading, now, note, isConcerned = false, table, children }: PictureProps) {
  return (
    <figure id={id} class={isConcerned ? "picture picture-concerned" : "picture"}>
      <figcaption>
        <h3>{heading}</h3>
        {note}
        <Now say={now} />
      </figcaption>
      {children}
      <div class="picture-foot">
        {table}
        <ViewLink id={id} heading={heading} />
      </div>
    </figure>
  );
}

function Now({ say }: { readonly say: (ms: number) => string }) {
  const { view } = useLooking();
  return (
    <p class="now">
      <span class="now-time">{view.clocks.layoutText(view.moment.value)}</span> {say(view.moment.value)}
    </p>
  );
}

/** The address that shows this picture with the same finding, moment and window. Following it also copies it. */
function ViewLink({ id, heading }: { readonly id: string; readonly heading: string }) {
  const { view } = useLooking();
  const [isCopied, setCopied] = useState(false);
  const href = `${location.pathname}${view.search.value}#${encodeURIComponent(id)}`;
  const follow = async (event: MouseEvent) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
    event.preventDefault();
    event.stopPropagation();
    history.replaceState(null, "", href);
    try {
      await navigator.clipboard.writeText(location.href);
      setCopied(true);
      setTimeout(() => setCopied(false), 2_000);
    } catch {
      // no clipboard here: the address bar has the link
    }
  };
  return (
    <a class="view-link" href={href} onClick={follow} aria-label={`Link to this view: ${heading}`}>
      <span aria-live="polite">{isCopied ? "Link copied" : "Link to this view"}</span>
    </a>
  );
}
