import { hashRaw } from "@node-rs/argon2";
import { describe, expect, it } from "vitest";
import { passwordFault } from "../../../src/features/accounts/common-passwords.ts";
import { createPasswords, PASSWORD_COST } from "../../../src/features/accounts/passwords.ts";

describe("a password", () => {
  it("is hashed by argon2id as the reference implementation does it", async () => {
    // P-H-C/phc-winner-argon2, src/test.c, version 0x13 (value from memory). The vector of RFC 9106 section 5.3 has associated
    // data, which the library does not take.
    const raw = await hashRaw("password", {
      salt: Buffer.from("somesalt"),
      memoryCost: 65_536,
      timeCost: 2,
      parallelism: 1,
    });
    expect(raw.toString("hex")).toBe("09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7");
  });

  it("is stored with the cost that OWASP asks for, each time with another salt", async () => {
    const passwords = createPasswords(PASSWORD_COST);
    const [a, b] = await Promise.all([passwords.hash("in the yard"), passwords.hash("in the yard")]);
    // OWASP Password Storage Cheat Sheet: argon2id, m = 19456 (19 MiB), t = 2, p = 1
    expect(a).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}$/);
    expect(a).not.toBe(b);
    expect(await passwords.matches(a, "in the yard")).toBe(true);
    expect(await passwords.matches(a, "in the Yard")).toBe(false);
  });

  it("is the same however a keyboard writes its letters", async () => {
    const passwords = createPasswords({ memoryCost: 8, timeCost: 1, parallelism: 1 });
    const stored = await passwords.hash("bru\u0308cke am see");
    expect(await passwords.matches(stored, "br\u00fccke am see")).toBe(true);
  });

  it("of nobody matches nothing, not even what stands in for it", async () => {
    const passwords = createPasswords({ memoryCost: 8, timeCost: 1, parallelism: 1 });
    expect(await passwords.matches(undefined, "a password that nobody has")).toBe(false);
    expect(await passwords.matches(null, "")).toBe(false);
  });
});

describe("a password to be chosen", () => {
  const known = ["Ada Fenwright", "ada.f@example.org", "Northfold"];

  it.each([
    "12345678",
    "Password1",
    "PASSWORD",
    "pass word",
    "qwertyuiop",
    "iloveyou",
    "aaaaaaaaaaaa",
    "abababab",
    "hgfedcba",
    "23456789",
  ])("is refused where too many have it: %s", (password) => {
    expect(passwordFault(password, known)).toContain("Too many");
  });

  it.each(["Ada Fenwright", "northfold2026", "ada.f@example.org", "adafenwright1"])(
    "is refused where it is the person's or the club's own name: %s",
    (password) => {
      expect(passwordFault(password, [...known, "adafenwright"])).toContain("would try");
    },
  );

  it.each(["four lamps in the goods yard", "kx7 tz pm", "Ärger mit Öl!", "🚂🚃🚃🚃🛤️🌧️🌙⭐"])(
    "may be of any kind: %s",
    (password) => {
      expect(passwordFault(password, known)).toBeUndefined();
    },
  );
});
