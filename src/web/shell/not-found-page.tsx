import { Page } from "./page.tsx";

/** What to do at an address that leads nowhere, with what the service said of it. */
export function NotFound({ happened }: { readonly happened?: string }) {
  return (
    <section class="problem">
      {happened && <h2>{happened}</h2>}
      <p>It may have been renamed or removed, or the address may have a slip in it. Nothing was changed.</p>
      <p>
        <a href="/">Go to the nights</a> and look from there.
      </p>
    </section>
  );
}

export function NotFoundPage() {
  return (
    <Page title="No such page" heading="There is no page at this address">
      <NotFound />
    </Page>
  );
}
