import { z } from "zod";
import { PERMISSIONS } from "./permissions.ts";
import { code, name } from "./units.ts";
import { ROLES } from "./vocabulary.ts";

/** Characters of a password. Any kind will do: a sentence is better than signs (OWASP ASVS 5.0, 6.2). */
export const PASSWORD_LENGTH = { min: 8, max: 128 } as const;

const EMAIL_MAX = 254; // RFC 5321 section 4.5.3.1.3, without its angle brackets

/** One signs in with it. Capitals do not count. */
export const email = z
  .string()
  .trim()
  .toLowerCase()
  .max(EMAIL_MAX)
  .check(z.email("Must be an e-mail address, such as ada@example.org."))
  .meta({ description: "E-mail address; capitals do not count.", examples: ["ada@example.org"] });

/** One to be chosen. */
export const newPassword = z
  .string()
  .min(PASSWORD_LENGTH.min)
  .max(PASSWORD_LENGTH.max)
  .meta({ description: "8 to 128 characters of any kind; refused where too many people have the same." });

/** One to be compared: whatever was typed. */
const givenPassword = z.string().min(1).max(1_000);

const instant = z.iso.datetime();

export const signInBody = z.strictObject({ email, password: givenPassword }).meta({ id: "SignIn" });

export const me = z
  .object({
    person: z.object({ name, email: z.string() }),
    clubs: z.array(
      z.object({
        code,
        name,
        member: code.nullable().meta({ description: "One's code among the club's members." }),
        roles: z.array(z.enum(ROLES)),
        permissions: z.array(z.enum(PERMISSIONS)).meta({ description: "All that the roles allow together." }),
      }),
    ),
    expires: instant.meta({ description: "When the sign-in or token ends, however much it is used." }),
  })
  .meta({ id: "Me" });

export const meBody = z.strictObject({ name }).meta({ id: "MeBody" });

export const passwordBody = z
  .strictObject({ current: givenPassword, password: newPassword })
  .meta({ id: "PasswordChange" });

export const eraseBody = z.strictObject({ password: givenPassword }).meta({ id: "Erasure" });

export const TOKEN_SCOPES = ["read", "write"] as const;

const tokenScope = z
  .enum(TOKEN_SCOPES)
  .meta({ description: "`read`: changes nothing; `write`: all that its owner may." });

export const tokenBody = z
  .strictObject({
    name: z.string().trim().min(1).max(80).meta({ description: "What it is for." }),
    scope: tokenScope,
    club: code.nullable().default(null).meta({ description: "The one club it is good for; null: all." }),
    expiresAt: z.iso
      .datetime({ offset: true })
      .meta({ description: "Within a year from now.", examples: ["2027-03-01T00:00:00Z"] }),
  })
  .meta({ id: "AccessTokenBody" });

export const accessToken = z
  .object({
    id: z.uuid(),
    name: z.string(),
    scope: tokenScope,
    club: code.nullable(),
    createdAt: instant,
    expiresAt: instant,
    lastUsedAt: instant.nullable().meta({ description: "To within a few minutes; null: never." }),
  })
  .meta({ id: "AccessToken" });

export const madeToken = z
  .object({
    ...accessToken.shape,
    token: z.string().meta({ description: "Sent as `Authorization: Bearer …`. Shown here and never again." }),
  })
  .meta({ id: "MadeAccessToken" });

export const demoSignIn = z
  .object({ email: z.string(), password: z.string(), name, roles: z.array(z.enum(ROLES)) })
  .meta({ id: "DemoSignIn" });

export const LINK_PURPOSES = ["invitation", "reset", "first-secretary"] as const;

/** What a one-time link is good for. */
export const oneTimeLink = z
  .object({
    purpose: z.enum(LINK_PURPOSES).meta({ description: "What using it does." }),
    expiresAt: instant,
    email: z.string().nullable().meta({ description: "Whose it is; null: whoever has it may say." }),
    club: z.object({ code, name }).nullable().meta({ description: "The club it leads into." }),
    name: z.string().nullable().meta({ description: "As the club's list of members has it." }),
    hasAccount: z.boolean().meta({ description: "Whether the address has an account already." }),
  })
  .meta({ id: "OneTimeLink" });

/** What each purpose asks for: an invitation name and password, or nothing when one is signed in with that address;
 * a reset the password; the first secretary all three. */
export const redeemBody = z
  .strictObject({ name: name.optional(), email: email.optional(), password: newPassword.optional() })
  .meta({ id: "LinkUse" });

export const resetBody = z.strictObject({ email }).meta({ id: "ResetRequest" });

export const invitationBody = z.strictObject({ email }).meta({ id: "InvitationBody" });

export const invitation = z
  .object({
    link: z.string().meta({ description: "Good once, for whoever has it. Shown here and never again." }),
    expiresAt: instant,
    mailed: z.boolean().meta({ description: "Whether the service sends it by mail as well." }),
  })
  .meta({ id: "Invitation" });

export const ACCOUNT_STATES = ["none", "invited", "active"] as const;

export const memberAccount = z
  .object({
    member: code,
    account: z.enum(ACCOUNT_STATES).meta({ description: "`invited`: a link waits to be used." }),
    email: z.string().nullable(),
  })
  .meta({ id: "MemberAccount" });

/** All that the service keeps of a person. */
export const personExport = z
  .object({
    person: z.object({ name, email: z.string(), createdAt: instant }),
    signIns: z.array(z.object({ createdAt: instant, lastSeenAt: instant, expiresAt: instant })),
    tokens: z.array(accessToken),
    clubs: z.array(
      z.object({
        code,
        name,
        member: code,
        kept: z
          .record(z.string(), z.array(z.record(z.string(), z.unknown())))
          .meta({ description: "By table: the rows that name the member." }),
      }),
    ),
    other: z
      .record(z.string(), z.array(z.record(z.string(), z.unknown())))
      .meta({ description: "By table: the rows that name the person in no club's list." }),
  })
  .meta({ id: "PersonExport" });

export type Me = z.output<typeof me>;
export type AccessToken = z.output<typeof accessToken>;
export type TokenBody = z.output<typeof tokenBody>;
export type TokenScope = (typeof TOKEN_SCOPES)[number];
export type LinkPurpose = (typeof LINK_PURPOSES)[number];
export type OneTimeLink = z.output<typeof oneTimeLink>;
export type RedeemBody = z.output<typeof redeemBody>;
export type Invitation = z.output<typeof invitation>;
export type MemberAccount = z.output<typeof memberAccount>;
export type PersonExport = z.output<typeof personExport>;
export type DemoSignIn = z.output<typeof demoSignIn>;
