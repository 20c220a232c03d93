import { Refusal } from "../../lib/refusal.ts";

/** The same for an address nobody has an account with. */
export const wrongSignIn = () =>
  new Refusal("wrong-sign-in", "There is no account with this e-mail address and password.");

export const onlyInBrowser = () =>
  new Refusal("not-permitted", "A token may not do this: sign in on the service's pages.");

/** One place in the body is no good for a reason that its schema does not know. */
export const faultAt = (field: string, detail: string) =>
  new Refusal("validation-failed", `${detail}`, [{ pointer: `/body/${field}`, detail }]);

export const wrongPassword = (field: string) => faultAt(field, "This is not your password.");

export const keptForAll = () =>
  new Refusal("conflict", "The demo's sign-ins are everyone's, and stay as they are.");

export const spentLink = () =>
  new Refusal("not-found", "The link was used, has run out, was taken back, or is not whole.");

export const noMember = (member: string) => new Refusal("not-found", `There is no member ${member} here.`);

export const hasAccount = (member: string) =>
  new Refusal("conflict", `The member ${member} has an account with another address.`);

export const belongsElsewhere = (member: string) =>
  new Refusal(
    "conflict",
    `The account of ${member} is not this club's alone: only they can ask for a new password, by mail.`,
  );

export const alreadyMember = (email: string) =>
  new Refusal("conflict", `${email} is in this club already, as another member.`);

export const signInAs = (email: string) =>
  new Refusal(
    "not-signed-in",
    `There is an account with ${email}: sign in with it, then open the link again.`,
  );

export const stillHas = (count: number) =>
  new Refusal(
    "conflict",
    `You have ${count === 1 ? "a train or duty" : `${count} trains or duties`} in nights to come: give back what you have, or ask the secretary to where a night is locked.`,
  );

export const tooManyTokens = (most: number) => new Refusal("conflict", `You have ${most} tokens already.`);

export const notYourClub = (club: string) =>
  new Refusal("unprocessable", `You belong to no club ${club}.`, [
    { pointer: "/body/club", detail: `You belong to no club ${club}.` },
  ]);

export const noToken = () => new Refusal("not-found", "You have no such token.");
