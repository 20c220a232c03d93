interface CheckFieldProps {
  readonly label: string;
  readonly isChecked: boolean;
  readonly onChecked: (isChecked: boolean) => void;
  readonly hint?: string;
  readonly isDisabled?: boolean;
}

/** A box to tick; the whole line is good to press. */
export function CheckField({ label, isChecked, onChecked, hint, isDisabled = false }: CheckFieldProps) {
  return (
    <label class="check-field">
      <input
        type="checkbox"
        checked={isChecked}
        disabled={isDisabled}
        onChange={(event) => onChecked(event.currentTarget.checked)}
      />
      <span>
        {label}
        {hint && <span class="field-hint">{hint}</span>}
      </span>
    </label>
  );
}
