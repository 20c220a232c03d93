import { useId } from "preact/hooks";

interface SelectFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  /** What is sent, and what is read; pairs where the order matters, as keys that look like numbers go first. */
  readonly options: Readonly<Record<string, string>> | readonly (readonly [string, string])[];
  readonly hint?: string;
  /** What the service found wrong with it. */
  readonly fault?: string | undefined;
}

const pairsOf = (options: SelectFieldProps["options"]): readonly (readonly [string, string])[] =>
  Array.isArray(options) ? options : Object.entries(options);

/** One of a few, under its label. */
export function SelectField({ label, value, onValue, options, hint, fault }: SelectFieldProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <select
        id={id}
        value={value}
        aria-invalid={fault !== undefined}
        aria-describedby={
          [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(" ") || undefined
        }
        onChange={(event) => onValue(event.currentTarget.value)}
      >
        {pairsOf(options).map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
      {fault && (
        <p class="field-fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  );
}
