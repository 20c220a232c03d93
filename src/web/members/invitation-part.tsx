import { useState } from "preact/hooks";
import type { Invitation, MemberAccount } from "../../../shared/accounts.ts";
import { invite, type MemberRecord, revokeInvitation } from "../api/members.ts";
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
  readonly isMe: boolean;
  readonly again: () => void;
}

/** Whether a member can sign in, and the link that lets them. */
export function InvitationPart(props: InvitationPartProps) {
  const { account, member } = props;
  if (account?.account === "active" && account.email !== null)
    return (
      <Section
        heading="Signing in"
        about="Who forgot the password can be handed a link to choose another with. It works once, for whoever has it."
      >
        <p>
          {member.name} signs in as <strong>{account.email}</strong>.
        </p>
        {!props.isMe && <NewPasswordLink club={props.club} member={member} email={account.email} />}
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

interface NewPasswordLinkProps {
  readonly club: string;
  readonly member: MemberRecord;
  readonly email: string;
}

/** A link for who cannot be reached by mail, or where the service sends none. */
function NewPasswordLink({ club, member, email }: NewPasswordLinkProps) {
  const [made, setMade] = useState<Invitation | null>(null);
  const { isBusy, problem, run } = useSubmit(async () => setMade(await invite(club, member.code, email)));
  return (
    <>
      {made && (
        <div class="said-so">
          <CopyLine
            label="Link to a new password"
            value={made.link}
            hint={`Give it to ${member.name} alone. It works once, until ${dayAndTime(made.expiresAt)}, and is not shown again.`}
          />
        </div>
      )}
      <Refused problem={problem} />
      <p>
        <button type="button" class="tall" disabled={isBusy} onClick={() => void run()}>
          {isBusy ? "Making it …" : "Make a link to a new password"}
        </button>
      </p>
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
