import { Page } from "./page.tsx";

/** For an address that leads nowhere, as a part of a page. */
export function NotFound({ happened }: { readonly happened: string }) {
  return (
    <section class="problem">
      <h2>{happened}</h2>
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
      <NotFound happened="This address leads nowhere." />
    </Page>
  );
}
