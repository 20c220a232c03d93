export const unknownTimeZone = (zone: string) =>
  `The IANA time zone database has no ${zone}: write a name such as Europe/London.`;
