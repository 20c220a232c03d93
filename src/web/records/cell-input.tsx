import { YES } from "./draft.ts";
import type { Field } from "./fields.ts";
import type { Names } from "./records-service.ts";

interface CellInputProps {
  readonly id: string;
  readonly field: Field;
  readonly value: string;
  readonly names: Names;
  readonly fault: string | undefined;
  readonly onValue: (value: string) => void;
}

/** The control of one cell, as its field asks for. */
export function CellInput({ id, field, value, names, fault, onValue }: CellInputProps) {
  const shared = {
    id,
    "aria-invalid": fault !== undefined,
    "aria-describedby": fault ? `${id}-fault` : field.hint ? `${id}-hint` : undefined,
  };
  const take = (event: Event) =>
    onValue((event.currentTarget as HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement).value);
  switch (field.holds) {
    case "yes":
      return (
        <input
          {...shared}
          type="checkbox"
          checked={value === YES}
          onChange={(event) => onValue(event.currentTarget.checked ? YES : "")}
        />
      );
    case "choice":
    case "one": {
      const options =
        field.holds === "choice"
          ? field.options.map((option) => [option, option] as const)
          : [...(names[field.of] ?? [])].map(
              ([code, name]) => [code, name === code ? code : `${code} ${name}`] as const,
            );
      return (
        <select {...shared} value={value} onChange={take}>
          {(field.isOptional || value === "") && (
            <option value="">{field.isOptional ? "none" : "choose"}</option>
          )}
          {options.map(([option, words]) => (
            <option key={option} value={option}>
              {words}
            </option>
          ))}
        </select>
      );
    }
    case "day":
      return <input {...shared} type="date" value={value} onInput={take} />;
    case "lines":
      return (
        <textarea {...shared} rows={Math.max(2, value.split("\n").length)} value={value} onInput={take} />
      );
    case "whole":
    case "number":
      return <input {...shared} inputMode="decimal" autocomplete="off" value={value} onInput={take} />;
    default:
      return <input {...shared} autocomplete="off" spellcheck={false} value={value} onInput={take} />;
  }
}
