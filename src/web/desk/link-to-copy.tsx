import { useRef, useState } from "preact/hooks";

/** An address to send to people. Where the browser lets no page copy, it is selected, to be copied by hand. */
export function LinkToCopy({ label, address }: { readonly label: string; readonly address: string }) {
  const field = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState("");
  const url = `${location.origin}${address}`;
  const copy = async () => {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(url);
      setSaid("Copied.");
    } catch {
      setSaid("Selected: copy it with the keyboard or the menu.");
    }
  };
  return (
    <div class="link-to-copy">
      <label class="night-field grows">
        <span class="night-field-label">{label}</span>
        <input ref={field} value={url} readOnly onFocus={() => field.current?.select()} />
      </label>
      <button type="button" class="big-button" onClick={copy}>
        Copy the link
      </button>
      <span role="status">{said}</span>
    </div>
  );
}
