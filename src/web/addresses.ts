/** Addresses of the pages, with every code made fit for one. */
export const nightsAddress = (club: string) => `/clubs/${encodeURIComponent(club)}`;

export const planAddress = (club: string, session: string, slot: string) =>
  `${nightsAddress(club)}/nights/${encodeURIComponent(session)}/${encodeURIComponent(slot)}`;

/** The addresses this client answers for; others, such as the API reference, are the service's own. */
export const OUR_ADDRESSES = /^\/(?:\?.*)?$|^\/clubs(?:\/|\?|$)/;

export const API_REFERENCE = "/api/docs";
