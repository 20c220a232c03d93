import type { OneTimeLink } from "../../../shared/accounts.ts";
import { readLink } from "../api/accounts.ts";
import { type Load, useLoad } from "../api/use-load.ts";
import { dayAndTime } from "../shell/instant.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Entrance } from "./entrance.tsx";
import { FirstSecretaryForm } from "./first-secretary-form.tsx";
import { InvitationForm } from "./invitation-form.tsx";
import { NewPasswordForm } from "./new-password-form.tsx";
import { SpentLink } from "./spent-link.tsx";

/** What a link that works once leads to: an invitation, a new password, or the first secretary's account. */
export function LinkPage({ token = "" }: { readonly token?: string }) {
  const load = useLoad(token, (signal) => readLink(token, signal));
  const words = wordsOf(load);
  return (
    <Entrance title={words} heading={words}>
      {load.status === "failed" && [404, 410].includes(load.problem.status) ? (
        <SpentLink />
      ) : (
        <Loaded load={load} what="Reading the link">
          {(link) => (
            <>
              <Task link={link} token={token} />
              <p class="quiet">This link works once, until {dayAndTime(link.expiresAt)}.</p>
            </>
          )}
        </Loaded>
      )}
    </Entrance>
  );
}

interface TaskProps {
  readonly link: OneTimeLink;
  readonly token: string;
}

function Task({ link, token }: TaskProps) {
  switch (link.purpose) {
    case "invitation":
      return <InvitationForm link={link} token={token} />;
    case "reset":
      return <NewPasswordForm link={link} token={token} />;
    case "first-secretary":
      return <FirstSecretaryForm token={token} />;
  }
}

function wordsOf(load: Load<OneTimeLink>): string {
  if (load.status === "failed") return "This link cannot be used";
  if (load.status !== "ready") return "One moment";
  switch (load.value.purpose) {
    case "invitation":
      return `Join ${load.value.club?.name ?? "the club"}`;
    case "reset":
      return "Choose a new password";
    case "first-secretary":
      return "The first account of this service";
  }
}
