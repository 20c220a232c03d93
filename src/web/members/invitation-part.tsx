import { useState } from "preact/hooks";
import type { MemberAccount } from "../../../shared/accounts.ts";
import { type Invitation, invite, type MemberRecord, revokeInvitation } from "../api/members.ts";
import { CopyLine } from "../shell/copy-line.tsx";
import { ForGood } from "../shell/for-good.tsx";
import { dayAndTime } from "../shell/instant.ts";
import { Refused } from "../shell/refused.tsx";
import { Section } from "../shell/section.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";

interface InvitationPartProps {
  readonly club: string;
  readonly member: MemberRecord;
  readonly account: MemberAccount | undefined;
  readonly again: () => void;
}

/** Whether a member can sign in, and the link that lets them. */
export function InvitationPart(props: InvitationPartProps) {
  const { account, member } = props;
  if (account?.account === "active")
    return (
      <Section heading="Signing in">
        <p>
          {member.name} signs in as <strong>{account.email}</strong>.
        </p>
      </Section>
    );
  return (
    <Section
      heading="Signing in"
      about="An invitation is a link that works once and for a few days. Whoever has it gets in under this name: give it to nobody else."
    >
      <Invite {...props} />
    </Section>
  );
}

function Invite({ club, member, account, again }: InvitationPartProps) {
  const [email, setEmail] = useState(account?.email ?? "");
  const [made, setMade] = useState<Invitation | null>(null);
  const inviting = useSubmit(async () => setMade(await invite(club, member.code, email)));
  const revoking = useSubmit(async () => {
    await revokeInvitation(club, member.code);
    setMade(null);
    again();
  });
  const isInvited = account?.account === "invited" || made !== null;
  return (
    <>
      {made && <Made invitation={made} email={email} name={member.name} />}
      {isInvited && !made && (
        <p>
          Invited as <strong>{account?.email}</strong>, and has not joined yet. The link is not shown again; a
          new one replaces it.
        </p>
      )}
      <form class="form" onSubmit={inviting.submit}>
        <TextField
          label="E-mail address"
          hint="They sign in with it."
          type="email"
          value={email}
          onValue={setEmail}
          fault={inviting.faultAt("/body/email")}
        />
        <Refused problem={inviting.problem ?? revoking.problem} besides={["/body/email"]} />
        <div class="form-end">
          <button type="submit" disabled={inviting.isBusy}>
            {inviting.isBusy ? "Inviting …" : isInvited ? "Make a new invitation" : "Invite"}
          </button>
          {isInvited && (
            <ForGood
              word="Take back"
              what="the invitation"
              isBusy={revoking.isBusy}
              onSure={() => void revoking.run()}
            />
          )}
        </div>
      </form>
    </>
  );
}

interface MadeProps {
  readonly invitation: Invitation;
  readonly email: string;
  readonly name: string;
}

function Made({ invitation, email, name }: MadeProps) {
  return (
    <div class="said-so" role="status">
      <p>
        {name} is invited.{" "}
        {invitation.mailed
          ? `The link is on its way to ${email}; you may also send it yourself.`
          : "This service sends no mail: send the link yourself."}
      </p>
      <CopyLine
        label="Invitation link"
        value={invitation.link}
        hint={`Works once, until ${dayAndTime(invitation.expiresAt)}. It is not shown again.`}
      />
    </div>
  );
}
