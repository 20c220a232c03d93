import { useLocation } from "preact-iso";
import { API_REFERENCE, nightsAddress } from "../addresses.ts";
import { clubName } from "./club-name.ts";
import { ThemeSwitch } from "./theme-switch.tsx";

/** The club whose page this is; null outside any. */
function clubOf(path: string): string | null {
  const [, club] = /^\/clubs\/([^/]+)/.exec(path) ?? [];
  return club === undefined ? null : decodeURIComponent(club);
}

export function Header() {
  const { path } = useLocation();
  const club = clubOf(path);
  return (
    <header class="site-header">
      <a class="brand" href="/">
        <svg viewBox="0 0 32 32" width="26" height="26" aria-hidden="true">
          <path class="brand-limit" d="M3 7H29" />
          <path class="brand-train" d="M3 28 13 13h6L29 28" />
        </svg>
        Running Foreman
      </a>
      {club !== null && (
        <a class="club" href={nightsAddress(club)}>
          {clubName.value ?? club}
        </a>
      )}
      <nav aria-label="Site">
        {club !== null && (
          <a href={nightsAddress(club)} aria-current={path === nightsAddress(club) ? "page" : undefined}>
            Nights
          </a>
        )}
        <a href={API_REFERENCE}>API</a>
      </nav>
      <ThemeSwitch />
    </header>
  );
}
