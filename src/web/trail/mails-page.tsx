import { useEffect, useState } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import type { MailState, MailTemplate, MailView } from "../../../shared/mails.ts";
import { listMails } from "../api/mails.ts";
import { type ListPage, readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { dayAndTime } from "../shell/instant.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";

const TEMPLATE_WORDS = {
  invitation: "Invitation",
  reset: "New password",
  "got-it": "Got the train",
  assigned: "Was assigned",
  "taken-off": "Taken off",
  "swap-offered": "Swap offered",
  swapped: "Swapped",
  reminder: "Reminder",
  "note-to-all": "Note to all",
} as const satisfies Record<MailTemplate, string>;

const STATE_WORDS = {
  waiting: "waits",
  sending: "on its way",
  sent: "sent",
  failed: "failed",
} as const satisfies Record<MailState, string>;

/** What was mailed for the club, and what became of it. */
export function MailsPage({ club = "" }: { readonly club?: string }) {
  const load = useLoad(club, (signal) =>
    Promise.all([readClub(club, signal), listMails(club, null, signal)]),
  );
  return (
    <Page
      title="Mails"
      heading="Mails"
      intro={
        <p class="lead">
          What was mailed for the club, and what became of it. Texts are not kept: they may hold a secret
          link.
        </p>
      }
    >
      <Loaded load={load} what="Looking up the mails">
        {([record, first]) => <Mails club={record} first={first} />}
      </Loaded>
    </Page>
  );
}

interface MailsProps {
  readonly club: Club;
  readonly first: ListPage<MailView>;
}

function Mails({ club, first }: MailsProps) {
  const [{ items, next }, setShown] = useState(first);
  const { isBusy, problem, run } = useSubmit(async (cursor: string) => {
    const page = await listMails(club.code, cursor, new AbortController().signal);
    setShown((known) => ({ items: [...known.items, ...page.items], next: page.next }));
  });
  useEffect(() => {
    clubName.value = club.name;
  }, [club.name]);
  if (items.length === 0)
    return (
      <div class="empty">
        <p>
          No mail was sent for the club yet. Members are mailed when they are invited, get a train, are
          assigned one, and on the day before. Where the service has no mail server, nothing is sent, and
          links are shown to be passed on.
        </p>
      </div>
    );
  return (
    <>
      <table class="cards">
        <thead>
          <tr>
            <th scope="col">To</th>
            <th scope="col">Why</th>
            <th scope="col">Asked for</th>
            <th scope="col">What became of it</th>
          </tr>
        </thead>
        <tbody>
          {items.map((mail) => (
            <MailRow key={mail.id} mail={mail} timeZone={club.timeZone} />
          ))}
        </tbody>
      </table>
      <Refused problem={problem} />
      {next !== null && (
        <button type="button" class="tall" disabled={isBusy} onClick={() => void run(next)}>
          {isBusy ? "Reading …" : "Show older ones"}
        </button>
      )}
    </>
  );
}

function MailRow({ mail, timeZone }: { readonly mail: MailView; readonly timeZone: string }) {
  const { state, sentAt, attempts, error } = mail;
  return (
    <tr>
      <th scope="row">{mail.to || <span class="quiet">someone who was erased</span>}</th>
      <td data-label="Why">
        {TEMPLATE_WORDS[mail.template]} <span class="quiet">{mail.subject}</span>
      </td>
      <td data-label="Asked for">{dayAndTime(mail.queuedAt, timeZone)}</td>
      <td data-label="What became of it">
        <span class={`mail-${state}`}>{STATE_WORDS[state]}</span>
        {sentAt && ` ${dayAndTime(sentAt, timeZone)}`}
        {state !== "sent" && attempts > 0 && ` after ${attempts} ${attempts === 1 ? "try" : "tries"}`}
        {error && <span class="quiet"> {error}</span>}
      </td>
    </tr>
  );
}
