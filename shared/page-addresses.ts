/** Pages that mails lead to, each from the root of the service, with every code made fit for an address. */
const clubPath = (club: string) => `/clubs/${encodeURIComponent(club)}`;

export const eveningPath = (club: string, session: string) =>
  `${clubPath(club)}/my-evening/${encodeURIComponent(session)}`;

export const crewPath = (club: string, session: string) =>
  `${clubPath(club)}/crew/${encodeURIComponent(session)}`;

/** Of a one-time link. */
export const linkPath = (token: string) => `/links/${encodeURIComponent(token)}`;
