import type { HttpApp } from "../../http/create-http.ts";
import type { NightDeps } from "./deps.ts";
import { registerNightRoutes } from "./routes.ts";
import { registerTrainRoutes } from "./train-routes.ts";

export { createStopClock } from "./clock-service.ts";

/** The night as it is run: its layout clock, people, handsets, trains and what goes wrong. */
export function installNight(app: HttpApp, deps: NightDeps): void {
  registerNightRoutes(app, deps);
  registerTrainRoutes(app, deps);
}
