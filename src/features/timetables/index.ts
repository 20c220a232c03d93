import { code } from "../../../shared/units.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { installClubCollections } from "../../records/club-collections.ts";
import { installCollection } from "../../records/collection-routes.ts";
import { versionNumber } from "../../records/version-number.ts";
import { timetableKind, trainKind } from "./kinds.ts";
import { registerVersionRoutes } from "./routes.ts";
import { createVersionService, reachTrains } from "./service.ts";
import { findTrainFlaws } from "./train-flaws.ts";

/** For what is tried on trains: a draft with the trains of a version, changed. */
export const createDraftWith = (database: DatabaseClient) => createVersionService(database).draftWith;

export { findTrainFlaws, reachTrains, timetableKind, trainKind };

/** Timetables, their versions, and the trains of each. */
export function installTimetables(app: HttpApp, { database }: { readonly database: DatabaseClient }): void {
  installClubCollections(app, database, "timetables", [timetableKind]);
  registerVersionRoutes(app, createVersionService(database));
  installCollection(app, database, trainKind, {
    under: "/api/clubs/:club/timetables/:timetable/versions/:version",
    params: { club: code, timetable: code, version: versionNumber },
    tag: "timetables",
    resolve: ({ club = "", timetable = "", version }) =>
      reachTrains(database, club, timetable, Number(version)),
  });
}
