import type { ComponentChildren } from "preact";
import { Page } from "../shell/page.tsx";

interface EntranceProps {
  readonly title: string;
  readonly heading: string;
  readonly intro?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The frame of the pages before a sign-in: narrow, with one thing to do. */
export function Entrance({ title, heading, intro, children }: EntranceProps) {
  return (
    <Page title={title} heading={heading} class="entrance">
      {intro && <p class="entrance-intro">{intro}</p>}
      {children}
    </Page>
  );
}
