import { useLocation } from "preact-iso";
import { isBeforeSignIn, membersAddress, newMemberAddress, nightsAddress } from "../addresses.ts";
import { type Me, meState } from "../api/me.ts";
import { clubName } from "./club-name.ts";
import { PersonMenu } from "./person-menu.tsx";
import { ThemeSwitch } from "./theme-switch.tsx";

/** The club whose page this is; null outside any. */
function clubOf(path: string): string | null {
  const [, club] = /^\/clubs\/([^/]+)/.exec(path) ?? [];
  return club === undefined ? null : decodeURIComponent(club);
}

export function Header() {
  const { path } = useLocation();
  const club = clubOf(path);
  const state = meState();
  const me = state.status === "known" && !isBeforeSignIn(path) ? state.me : null;
  return (
    <header class="site-header">
      <a class="brand" href="/">
        <svg viewBox="0 0 32 32" width="26" height="26" aria-hidden="true">
          <path class="brand-limit" d="M3 7H29" />
          <path class="brand-train" d="M3 28 13 13h6L29 28" />
        </svg>
        Running Foreman
      </a>
      {club !== null && me && <ClubPart club={club} path={path} me={me} />}
      <div class="site-end">
        <ThemeSwitch />
        {me && <PersonMenu me={me} />}
      </div>
    </header>
  );
}

interface ClubPartProps {
  readonly club: string;
  readonly path: string;
  readonly me: Me;
}

/** The club's name and its pages. */
function ClubPart({ club, path, me }: ClubPartProps) {
  const own = me.clubs.find(({ code }) => code === club)?.name;
  const [nights, members] = [nightsAddress(club), membersAddress(club)];
  const isUnder = (address: string) => path === address || path.startsWith(`${address}/`);
  const isMembers = isUnder(members) || path === newMemberAddress(club);
  return (
    <>
      <a class="club" href={nights}>
        {own ?? clubName.value ?? club}
      </a>
      <nav aria-label="Club">
        <a href={nights} aria-current={path === nights ? "page" : isMembers ? undefined : "true"}>
          Nights
        </a>
        <a href={members} aria-current={path === members ? "page" : isMembers ? "true" : undefined}>
          Members
        </a>
      </nav>
    </>
  );
}
