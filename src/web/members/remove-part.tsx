import { useLocation } from "preact-iso";
import { membersAddress } from "../addresses.ts";
import type { Answer } from "../api/ask.ts";
import { type MemberRecord, removeMember } from "../api/members.ts";
import { ForGood } from "../shell/for-good.tsx";
import { Refused } from "../shell/refused.tsx";
import { Section } from "../shell/section.tsx";
import { useSubmit } from "../shell/use-submit.ts";

interface RemovePartProps {
  readonly club: string;
  readonly record: Answer<MemberRecord>;
}

/** Takes a member off the list, which the service refuses while something still refers to them. */
export function RemovePart({ club, record: { value, etag } }: RemovePartProps) {
  const { route } = useLocation();
  const { isBusy, problem, run } = useSubmit(async () => {
    await removeMember(club, value.code, etag);
    route(membersAddress(club), true);
  });
  return (
    <Section
      heading="Leaving the club"
      about="Off the list, they no longer see the club. What they did stays in the trail."
    >
      <ForGood word="Remove" what={value.name} isBusy={isBusy} onSure={() => void run()} />
      <Refused problem={problem} />
    </Section>
  );
}
