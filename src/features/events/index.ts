import type { Authenticate } from "../../http/actor.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { registerEventRoutes } from "./routes.ts";
import { createEventsService, type EventsDeps } from "./service.ts";

/** Live events. Open streams end as the app begins to close: it would wait for them. */
export function installEvents(
  app: HttpApp,
  deps: EventsDeps & { readonly authenticate: Authenticate },
): void {
  const service = createEventsService(deps);
  registerEventRoutes(app, service, deps.authenticate);
  app.addHook("preClose", async () => service.endStreams());
  app.addHook("onClose", async () => service.close());
}
