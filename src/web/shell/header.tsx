import { useEffect, useRef } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Me } from "../../../shared/accounts.ts";
import {
  bothWaysAddress,
  handsetsAddress,
  isBeforeSignIn,
  mailsAddress,
  membersAddress,
  newMemberAddress,
  nightsAddress,
  railwayAddress,
  readingsAddress,
  rosterAddress,
  rosterImportAddress,
  trailAddress,
  wiringAddress,
} from "../addresses.ts";
import { meState } from "../api/me.ts";
import { useMay } from "../api/use-me.ts";
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

/** The club's name and its pages, as far as one's roles lead to them. */
function ClubPart({ club, path, me }: ClubPartProps) {
  const readsTrail = useMay(club, "read-trail");
  const keepsClub = useMay(club, "keep-club");
  const own = me.clubs.find(({ code }) => code === club)?.name;
  const nights = nightsAddress(club);
  const beside = [
    { words: "Railway", address: railwayAddress(club), also: bothWaysAddress(club) },
    { words: "Roster", address: rosterAddress(club), also: rosterImportAddress(club) },
    { words: "Handsets", address: handsetsAddress(club) },
    { words: "Wiring", address: wiringAddress(club) },
    { words: "Readings", address: readingsAddress(club) },
    { words: "Members", address: membersAddress(club), also: newMemberAddress(club) },
    readsTrail && { words: "Trail", address: trailAddress(club) },
    keepsClub && { words: "Mails", address: mailsAddress(club) },
  ].filter((page) => page !== false);
  const isIn = ({ address, also }: Beside) => path.startsWith(`${address}/`) || path === also;
  const here = beside.find((page) => path === page.address || isIn(page));
  const nav = useRef<HTMLElement>(null);
  // on a phone the row is wider than the window
  useEffect(() => {
    const current = nav.current?.querySelector<HTMLElement>("[aria-current]");
    if (nav.current && current) nav.current.scrollLeft = middle(current) - middle(nav.current);
  }, [here?.address]);
  return (
    <>
      <a class="club" href={nights}>
        {own ?? clubName.value ?? club}
      </a>
      <nav ref={nav} aria-label="Club">
        <a href={nights} aria-current={here ? undefined : path === nights ? "page" : "true"}>
          Nights
        </a>
        {beside.map((page) => (
          <a
            key={page.address}
            href={page.address}
            aria-current={page !== here ? undefined : isIn(page) ? "true" : "page"}
          >
            {page.words}
          </a>
        ))}
      </nav>
    </>
  );
}

const middle = ({ offsetLeft, offsetWidth }: HTMLElement) => offsetLeft + offsetWidth / 2;

interface Beside {
  readonly address: string;
  /** Another page that belongs to it. */
  readonly also?: string;
}
