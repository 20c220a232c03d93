import { useEffect, useRef, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Me } from "../../../shared/accounts.ts";
import { ACCOUNT, API_REFERENCE, signInAddress } from "../addresses.ts";
import { signOut } from "../api/accounts.ts";
import { forgetMe } from "../api/me.ts";
import { Refused } from "./refused.tsx";
import { useSubmit } from "./use-submit.ts";

/** First letters of the first and the last name. */
function initials(name: string): string {
  const words = name.trim().split(/\s+/);
  const letters = [words[0], words.length > 1 ? words.at(-1) : undefined].map((word) => [...(word ?? "")][0]);
  return letters.join("").toUpperCase();
}

/** Who is signed in, and what concerns nobody else: a menu that closes by itself. */
export function PersonMenu({ me }: { readonly me: Me }) {
  const { url, route } = useLocation();
  const [isOpen, setOpen] = useState(false);
  const menu = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const { isBusy, problem, run } = useSubmit(async () => {
    await signOut();
    route(signInAddress("/"));
    forgetMe();
  });
  useEffect(() => setOpen(false), [url]);
  useEffect(() => {
    if (!isOpen) return;
    const press = (event: Event) => {
      if (!menu.current?.contains(event.target as Node)) setOpen(false);
    };
    const key = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      setOpen(false);
      opener.current?.focus();
    };
    document.addEventListener("pointerdown", press);
    document.addEventListener("keydown", key);
    return () => {
      document.removeEventListener("pointerdown", press);
      document.removeEventListener("keydown", key);
    };
  }, [isOpen]);
  const { name, email } = me.person;
  return (
    <div class="person-menu" ref={menu}>
      <button
        ref={opener}
        type="button"
        aria-expanded={isOpen}
        aria-controls="person-panel"
        onClick={() => setOpen(!isOpen)}
      >
        <span class="initials" aria-hidden="true">
          {initials(name)}
        </span>
        <span class="person-name">{name}</span>
      </button>
      <div id="person-panel" class="person-panel" hidden={!isOpen}>
        <p>
          {name}
          <span class="quiet">{email}</span>
        </p>
        <a href={ACCOUNT}>My account</a>
        <a href={API_REFERENCE}>API reference</a>
        <button type="button" disabled={isBusy} onClick={() => void run()}>
          {isBusy ? "Signing out …" : "Sign out"}
        </button>
        <Refused problem={problem} />
      </div>
    </div>
  );
}
