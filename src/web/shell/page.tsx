import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

interface PageProps {
  /** Of the browser's tab. */
  readonly title: string;
  readonly heading: ComponentChildren;
  /** Under the heading. */
  readonly intro?: ComponentChildren;
  readonly class?: string;
  readonly children: ComponentChildren;
}

let isFirstPage = true;

/**
 * The frame of every page: tab title, one main heading. After a change of page the focus goes to the heading, so that
 * a screen reader says where one is; the first page leaves the focus to the browser.
 */
export function Page({ title, heading, intro, class: name = "", children }: PageProps) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Running Foreman`;
  }, [title]);
  useEffect(() => {
    if (!isFirstPage) head.current?.focus({ preventScroll: true });
    isFirstPage = false;
  }, []);
  return (
    <main id="main" class={`page ${name}`} tabIndex={-1}>
      <h1 ref={head} tabIndex={-1}>
        {heading}
      </h1>
      {intro}
      {children}
    </main>
  );
}
