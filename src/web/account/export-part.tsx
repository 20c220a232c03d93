import { EXPORT } from "../api/account.ts";
import { Section } from "../shell/section.tsx";

/** All that is kept of one, to take away. */
export function ExportPart() {
  return (
    <Section
      heading="Your data"
      about="All that this service keeps of you, in one file that programs can read."
    >
      <p>
        <a class="button" href={EXPORT} download="running-foreman-my-data.json">
          Download my data
        </a>
      </p>
    </Section>
  );
}
