import type { ComponentChildren } from "preact";

interface FieldProps {
  readonly label: string;
  /** What to know before filling it in, under the label. */
  readonly hint?: string;
  readonly class?: string;
  /** The control: a label wraps it, so it needs no id. */
  readonly children: ComponentChildren;
}

/** A control under its label. */
export function Field({ label, hint, class: name = "", children }: FieldProps) {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the control is the child
    <label class={`night-field ${name}`}>
      <span class="night-field-label">{label}</span>
      {hint && <span class="night-field-hint">{hint}</span>}
      {children}
    </label>
  );
}

/** What a control holds now. */
export const fieldText = (event: Event) =>
  (event.currentTarget as HTMLInputElement | HTMLSelectElement).value;
