/** The way back to the list that a page's record stands in. */
export function Crumb({ href, words }: { readonly href: string; readonly words: string }) {
  return (
    <nav class="crumbs" aria-label="Where you are">
      <a href={href}>{words}</a>
    </nav>
  );
}
