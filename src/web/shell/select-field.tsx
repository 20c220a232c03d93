import { useId } from "preact/hooks";

interface SelectFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  /** What is sent, and what is read. */
  readonly options: Readonly<Record<string, string>>;
  readonly hint?: string;
}

/** One of a few, under its label. */
export function SelectField({ label, value, onValue, options, hint }: SelectFieldProps) {
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
        aria-describedby={hint && `${id}-hint`}
        onChange={(event) => onValue(event.currentTarget.value)}
      >
        {Object.entries(options).map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
