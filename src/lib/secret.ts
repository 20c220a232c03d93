import { createHash, randomBytes } from "node:crypto";

// 256 bits: beyond guessing, so that a fast hash is enough to keep them by
const BYTES = 32;

/** A secret to be handed out once, in characters that an address may have. */
export const newSecret = (): string => randomBytes(BYTES).toString("base64url");

/** What is kept of a secret: enough to recognise it, not to tell it. */
export const hashSecret = (secret: string): string => createHash("sha256").update(secret).digest("base64url");
