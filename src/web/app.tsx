import { LocationProvider, Route, Router, useLocation } from "preact-iso";
import { AccountPage } from "./account/account-page.tsx";
import { ACCOUNT, isBeforeSignIn, OUR_ADDRESSES } from "./addresses.ts";
import { CrewPage } from "./crew/crew-page.tsx";
import { DeskPage } from "./desk/desk-page.tsx";
import { EveningPage } from "./evening/evening-page.tsx";
import { LivePage } from "./live/live-page.tsx";
import { MemberPage } from "./members/member-page.tsx";
import { MembersPage } from "./members/members-page.tsx";
import { NewMemberPage } from "./members/new-member-page.tsx";
import { ClubsPage } from "./nights/clubs-page.tsx";
import { NewNightPage } from "./nights/new-night-page.tsx";
import { NightsPage } from "./nights/nights-page.tsx";
import { PlanPage } from "./plan/plan-page.tsx";
import { Header } from "./shell/header.tsx";
import { later } from "./shell/later.tsx";
import { NotFoundPage } from "./shell/not-found-page.tsx";
import { SignInEnded } from "./shell/sign-in-ended.tsx";
import { SignedIn } from "./shell/signed-in.tsx";
import { ForgotPage } from "./sign-in/forgot-page.tsx";
import { LinkPage } from "./sign-in/link-page.tsx";
import { SignInPage } from "./sign-in/sign-in-page.tsx";
import { MailsPage } from "./trail/mails-page.tsx";
import { TrailPage } from "./trail/trail-page.tsx";

// the layout owner's pages
const BothWaysPage = later(async () => (await import("./costing/both-ways-page.tsx")).BothWaysPage);
const LoadPage = later(async () => (await import("./load/load-page.tsx")).LoadPage);
const PanelPage = later(async () => (await import("./panel/panel-page.tsx")).PanelPage);
const RailwayPage = later(async () => (await import("./railway/railway-page.tsx")).RailwayPage);
const ReadingsPage = later(async () => (await import("./readings/readings-page.tsx")).ReadingsPage);
const EveryReadingPage = later(
  async () => (await import("./readings/every-reading-page.tsx")).EveryReadingPage,
);
const StockPage = later(async () => (await import("./roster/stock-page.tsx")).StockPage);
const RosterImportPage = later(
  async () => (await import("./roster-import/import-page.tsx")).RosterImportPage,
);
const HandsetsPage = later(async () => (await import("./stock/handsets-page.tsx")).HandsetsPage);
const RosterPage = later(async () => (await import("./stock/roster-page.tsx")).RosterPage);
const WiringPage = later(async () => (await import("./wiring/wiring-page.tsx")).WiringPage);

/** The client: its frame and which page stands at which address. */
export function App() {
  return (
    <LocationProvider scope={OUR_ADDRESSES}>
      <a class="skip-link" href="#main">
        Skip to the page
      </a>
      <Header />
      <SignInEnded />
      <Pages />
    </LocationProvider>
  );
}

function Pages() {
  const { path } = useLocation();
  if (isBeforeSignIn(path)) return <Entrances />;
  return (
    <SignedIn>
      <Router>
        <Route path="/" component={ClubsPage} />
        <Route path="/clubs/:club" component={NightsPage} />
        <Route path="/clubs/:club/new-night" component={NewNightPage} />
        <Route path="/clubs/:club/live/:session" component={LivePage} />
        <Route path="/clubs/:club/crew/:session/:slot?" component={CrewPage} />
        <Route path="/clubs/:club/nights/:session" component={DeskPage} />
        <Route path="/clubs/:club/my-evening/:session" component={EveningPage} />
        <Route path="/clubs/:club/nights/:session/:slot" component={PlanPage} />
        <Route path="/clubs/:club/nights/:session/:slot/load" component={LoadPage} />
        <Route path="/clubs/:club/nights/:session/:slot/panel" component={PanelPage} />
        <Route path="/clubs/:club/railway/:table?" component={RailwayPage} />
        <Route path="/clubs/:club/roster/:table?" component={RosterPage} />
        <Route path="/clubs/:club/roster/:table/:code" component={StockPage} />
        <Route path="/clubs/:club/roster-import" component={RosterImportPage} />
        <Route path="/clubs/:club/handsets" component={HandsetsPage} />
        <Route path="/clubs/:club/wiring" component={WiringPage} />
        <Route path="/clubs/:club/both-ways" component={BothWaysPage} />
        <Route path="/clubs/:club/readings" component={ReadingsPage} />
        <Route path="/clubs/:club/readings/every" component={EveryReadingPage} />
        <Route path="/clubs/:club/members" component={MembersPage} />
        <Route path="/clubs/:club/members/:member" component={MemberPage} />
        <Route path="/clubs/:club/new-member" component={NewMemberPage} />
        <Route path="/clubs/:club/trail" component={TrailPage} />
        <Route path="/clubs/:club/mails" component={MailsPage} />
        <Route path={ACCOUNT} component={AccountPage} />
        <Route default component={NotFoundPage} />
      </Router>
    </SignedIn>
  );
}

/** Pages for whoever is not signed in yet. */
function Entrances() {
  return (
    <Router>
      <Route path="/sign-in" component={SignInPage} />
      <Route path="/forgot-password" component={ForgotPage} />
      <Route path="/links/:token" component={LinkPage} />
      <Route default component={NotFoundPage} />
    </Router>
  );
}
