import { Page } from "../shell/page.tsx";
import { CalendarPart } from "./calendar-part.tsx";
import { ErasePart } from "./erase-part.tsx";
import { ExportPart } from "./export-part.tsx";
import { NamePart } from "./name-part.tsx";
import { PasswordPart } from "./password-part.tsx";
import { TokensPart } from "./tokens-part.tsx";

/** What concerns whoever is signed in, and nobody else. */
export function AccountPage() {
  return (
    <Page title="My account" heading="My account" class="account-page">
      <NamePart />
      <PasswordPart />
      <CalendarPart />
      <TokensPart />
      <ExportPart />
      <ErasePart />
    </Page>
  );
}
