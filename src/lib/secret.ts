import { createHash, randomBytes } from "node:crypto";

const BYTES = 32;

/** 256 bits by chance: nobody guesses it, so its hash needs neither salt nor time. */
export const makeSecret = (): string => randomBytes(BYTES).toString("base64url");

/** What is kept of a secret. */
export const hashSecret = (secret: string): string => createHash("sha256").update(secret).digest("hex");
