import type { ComponentProps } from "preact";
import { useId } from "preact/hooks";

/** Phones put capitals and corrections into names, which is well, and into addresses, which is not. */
const AS_WRITTEN = { autocapitalize: "none", autocorrect: "off", spellcheck: false };

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly type?: "text" | "email" | "password" | "date" | "time";
  /** What browsers and password managers fill in; WHATWG HTML, 4.10.18.7. */
  readonly autocomplete?: string;
  /** What to know before filling it in. */
  readonly hint?: string | undefined;
  /** What the service found wrong with it. */
  readonly fault?: string | undefined;
  readonly isOptional?: boolean;
  /** Optional without saying so, as where a list is filtered. */
  readonly isPlain?: boolean;
  readonly isLong?: boolean;
  /** A password that may be read for now. */
  readonly isRevealed?: boolean;
  readonly maxLength?: number;
}

/** One line to fill in, under its label, with its fault right beside it. */
export function TextField(props: TextFieldProps) {
  const {
    label,
    value,
    onValue,
    type = "text",
    autocomplete,
    hint,
    fault,
    isOptional,
    isPlain,
    isLong,
    isRevealed,
  } = props;
  const id = useId();
  const described = [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(" ");
  const control = {
    id,
    value,
    required: !isOptional,
    maxLength: props.maxLength,
    "aria-invalid": fault !== undefined,
    "aria-describedby": described || undefined,
    onInput: (event: Event) => onValue((event.currentTarget as HTMLInputElement | HTMLTextAreaElement).value),
  };
  const line = {
    ...control,
    type: isRevealed ? "text" : type,
    autocomplete: autocomplete ?? "off",
    ...(type !== "text" && AS_WRITTEN),
  };
  return (
    <div class="field">
      <label for={id}>
        {label}
        {isOptional && !isPlain && <span class="quiet"> if any</span>}
      </label>
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {isLong ? <textarea {...control} rows={3} /> : <input {...(line as ComponentProps<"input">)} />}
      {fault && (
        <p class="field-fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  );
}
