import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

interface SectionProps {
  readonly heading: string;
  /** What it is for, beside or under the heading. */
  readonly about?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A part of a page that stands for itself: what it is on one side, what one does with it on the other. */
export function Section({ heading, about, children }: SectionProps) {
  const id = useId();
  return (
    <section class="section" aria-labelledby={id}>
      <div class="section-about">
        <h2 id={id}>{heading}</h2>
        {about && <p>{about}</p>}
      </div>
      <div class="section-body">{children}</div>
    </section>
  );
}
