import type { MailTemplate } from "../../shared/mails.ts";

/** What each kind of mail is told. Times are texts already, as the club's wall clock shows them. */
export interface LetterData {
  readonly invitation: {
    readonly club: string;
    readonly member: string;
    readonly link: string;
    readonly until: string;
  };
  readonly reset: { readonly link: string; readonly until: string };
  readonly "got-it": ClaimLetter;
  readonly assigned: ClaimLetter;
  readonly "taken-off": ClaimLetter;
  readonly "swap-offered": ClaimLetter;
  readonly swapped: ClaimLetter;
  readonly reminder: {
    readonly club: string;
    readonly night: string;
    readonly begins: string;
    /** One line a train or duty: `19:10 Train 101, Morning goods, from West yard, with handset H3`. */
    readonly lines: readonly string[];
    readonly venueNote: string;
    readonly link: string;
  };
  readonly "note-to-all": {
    readonly club: string;
    readonly night: string;
    readonly begins: string;
    readonly note: string;
    readonly link: string;
  };
}

interface ClaimLetter {
  readonly club: string;
  readonly night: string;
  /** `Train 101, Morning goods`. */
  readonly what: string;
  readonly when: string;
  readonly handset: string | null;
  readonly link: string;
}

export interface Letter {
  readonly subject: string;
  readonly text: string;
}

type Writers = { readonly [T in MailTemplate]: (data: LetterData[T]) => Letter };

const IGNORE = "If you did not expect this, do nothing: without the link nothing happens.";
const withHandset = (handset: string | null) => (handset === null ? "" : ` Your handset: ${handset}.`);

const WRITERS: Writers = {
  invitation: ({ club, member, link, until }) => ({
    subject: `${club}: your invitation`,
    text: paragraphs(
      `Hello ${member},`,
      `${club} books its operating sessions online and invites you to an account. Choose a password here, once, until ${until}:`,
      link,
      IGNORE,
    ),
  }),
  reset: ({ link, until }) => ({
    subject: "A new password",
    text: paragraphs(
      `Somebody, probably you, asked for a new password. Choose it here, once, until ${until}:`,
      link,
      IGNORE,
    ),
  }),
  "got-it": ({ club, night, what, when, handset, link }) => ({
    subject: `${night}: you got ${what}`,
    text: paragraphs(
      `${what} was given back, and you were next. It is yours: ${when}.${withHandset(handset)}`,
      `If you can't, give it back early, so that the next in the queue gets it:`,
      link,
      club,
    ),
  }),
  assigned: ({ club, night, what, when, handset, link }) => ({
    subject: `${night}: ${what} is yours`,
    text: paragraphs(
      `The secretary gave you ${what}: ${when}.${withHandset(handset)}`,
      `All you have that night, and how to give something back:`,
      link,
      club,
    ),
  }),
  "taken-off": ({ club, night, what, when, link }) => ({
    subject: `${night}: ${what} is no longer yours`,
    text: paragraphs(
      `The secretary took ${what} off you (${when}). What you still have that night:`,
      link,
      club,
    ),
  }),
  "swap-offered": ({ club, night, what, when, link }) => ({
    subject: `${night}: a swap for ${what}`,
    text: paragraphs(
      `Somebody offers you a swap for ${what}: ${when}. It stays yours until you accept:`,
      link,
      club,
    ),
  }),
  swapped: ({ club, night, what, when, handset, link }) => ({
    subject: `${night}: swapped, ${what} is yours`,
    text: paragraphs(`The swap is made. You now have ${what}: ${when}.${withHandset(handset)}`, link, club),
  }),
  reminder: ({ club, night, begins, lines, venueNote, link }) => ({
    subject: `${night}: ${begins}`,
    text: paragraphs(
      `${night} begins ${begins}. You have:`,
      lines.map((line) => `  ${line}`).join("\n"),
      venueNote,
      link,
      club,
    ),
  }),
  "note-to-all": ({ club, night, begins, note, link }) => ({
    subject: `${night}: a note to all`,
    text: paragraphs(`${night}, ${begins}:`, note, link, club),
  }),
};

export function writeLetter<T extends MailTemplate>(template: T, data: LetterData[T]): Letter {
  const { subject, text } = (WRITERS[template] as (data: LetterData[T]) => Letter)(data);
  // a name with a line break must not end the subject
  return { subject: subject.replaceAll(/\s+/g, " ").trim(), text };
}

const paragraphs = (...parts: readonly string[]) => `${parts.filter(Boolean).join("\n\n")}\n`;
