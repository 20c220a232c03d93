import { useState } from "preact/hooks";
import { CheckField } from "./check-field.tsx";
import { TextField } from "./text-field.tsx";

interface NewPasswordFieldProps {
  readonly label?: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly fault: string | undefined;
}

/** A password to be chosen, which one may look at while one writes it: nobody has to write it twice. */
export function NewPasswordField({ label = "Password", value, onValue, fault }: NewPasswordFieldProps) {
  const [isShown, setShown] = useState(false);
  return (
    <>
      <TextField
        label={label}
        type="password"
        isRevealed={isShown}
        autocomplete="new-password"
        hint="8 characters or more, of any kind. A sentence is easier to keep than signs."
        value={value}
        onValue={onValue}
        fault={fault}
      />
      <CheckField label="Show it" isChecked={isShown} onChecked={setShown} />
    </>
  );
}
