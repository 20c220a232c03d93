import { LocationProvider, Route, Router } from "preact-iso";
import { OUR_ADDRESSES } from "./addresses.ts";
import { ClubsPage } from "./nights/clubs-page.tsx";
import { NightsPage } from "./nights/nights-page.tsx";
import { PlanPage } from "./plan/plan-page.tsx";
import { Header } from "./shell/header.tsx";
import { NotFoundPage } from "./shell/not-found-page.tsx";

/** The client: its frame and which page stands at which address. */
export function App() {
  return (
    <LocationProvider scope={OUR_ADDRESSES}>
      <a class="skip-link" href="#main">
        Skip to the page
      </a>
      <Header />
      <Pages />
    </LocationProvider>
  );
}

function Pages() {
  return (
    <Router>
      <Route path="/" component={ClubsPage} />
      <Route path="/clubs/:club" component={NightsPage} />
      <Route path="/clubs/:club/nights/:session/:slot" component={PlanPage} />
      <Route default component={NotFoundPage} />
    </Router>
  );
}
