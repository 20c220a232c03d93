import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { registerPictureRoutes } from "./routes.ts";
import { createPictureService } from "./service.ts";

/** Pictures of locomotives and rakes. They are no part of a club's document, which is text. */
export async function installPictures(
  app: HttpApp,
  { database }: { readonly database: DatabaseClient },
): Promise<void> {
  await registerPictureRoutes(app, createPictureService(database));
}
