import type { RosterMapping } from "../../../shared/mapped-import.ts";
import type { FigureSource } from "../../../shared/vocabulary.ts";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";

interface MappingFormProps {
  readonly headings: readonly string[];
  readonly mapping: RosterMapping;
  readonly onMapping: (mapping: RosterMapping) => void;
}

const SOURCES = {
  measured: "measured",
  leaflet: "a leaflet",
  "rule of thumb": "a rule of thumb",
} as const satisfies Record<FigureSource, string>;

const CURRENTS = {
  running: "Running current",
  standing: "Standing current (sound, lights)",
  stall: "Stall current",
  inrush: "Inrush",
} as const;

const PLAIN = { name: "Name", address: "Decoder address", owner: "Whose", note: "Note" } as const;

const NONE = "";

/** Which column holds what, in which unit, and what to take where nothing is said. */
export function MappingForm({ headings, mapping, onMapping }: MappingFormProps) {
  const columns = [[NONE, "no column"], ...headings.map((heading) => [heading, heading])] as const;
  const set = (given: Partial<RosterMapping>) => onMapping({ ...mapping, ...given });
  const toColumn = (value: string) => (value === NONE ? null : value);
  return (
    <div class="mapping">
      <fieldset class="fieldset">
        <legend>Number</legend>
        <SelectField
          label="Column of the number"
          value={mapping.code}
          onValue={(code) => set({ code })}
          options={headings.map((heading) => [heading, heading] as const)}
        />
      </fieldset>
      <fieldset class="fieldset">
        <legend>Length</legend>
        <SelectField
          label="Column of the length"
          value={mapping.length.column ?? NONE}
          onValue={(value) => set({ length: { ...mapping.length, column: toColumn(value) } })}
          options={columns as readonly (readonly [string, string])[]}
        />
        <UnitField
          what="length"
          units={{ mm: "mm", cm: "cm", m: "m", in: "inches" }}
          headings={headings}
          given={mapping.length}
          onGiven={(length) => set({ length })}
        />
        <Constant
          label="Length where blank, mm"
          value={mapping.length.constantMm}
          onValue={(constantMm) => set({ length: { ...mapping.length, constantMm } })}
        />
      </fieldset>
      {(Object.keys(CURRENTS) as (keyof typeof CURRENTS)[]).map((key) => {
        const given = mapping[key];
        const words = CURRENTS[key].toLowerCase();
        const put = (change: Partial<typeof given>) => set({ [key]: { ...given, ...change } });
        return (
          <fieldset key={key} class="fieldset">
            <legend>{CURRENTS[key]}</legend>
            <SelectField
              label={`Column of the ${words}`}
              value={given.column ?? NONE}
              onValue={(value) => put({ column: toColumn(value) })}
              options={columns as readonly (readonly [string, string])[]}
            />
            <UnitField
              what={words}
              units={{ mA: "mA", A: "A" }}
              headings={headings}
              given={given}
              onGiven={put}
            />
            <SelectField
              label={`The ${words} is from`}
              value={given.source}
              onValue={(source) => put({ source: source as FigureSource })}
              options={SOURCES}
            />
            <Constant
              label={`The ${words} where blank, mA`}
              value={given.constantMa}
              onValue={(constantMa) => put({ constantMa })}
            />
          </fieldset>
        );
      })}
      <fieldset class="fieldset">
        <legend>Speed</legend>
        <SelectField
          label="Column of the top speed"
          value={mapping.maxSpeed.column ?? NONE}
          onValue={(value) => set({ maxSpeed: { ...mapping.maxSpeed, column: toColumn(value) } })}
          options={columns as readonly (readonly [string, string])[]}
        />
        <UnitField
          what="top speed"
          units={{ "km/h": "km/h", mph: "mph" }}
          headings={headings}
          given={mapping.maxSpeed}
          onGiven={(maxSpeed) => set({ maxSpeed })}
        />
      </fieldset>
      <fieldset class="fieldset">
        <legend>The rest</legend>
        {(Object.keys(PLAIN) as (keyof typeof PLAIN)[]).map((key) => (
          <SelectField
            key={key}
            label={PLAIN[key]}
            value={mapping[key] ?? NONE}
            onValue={(value) => set({ [key]: toColumn(value) })}
            options={columns as readonly (readonly [string, string])[]}
          />
        ))}
      </fieldset>
    </div>
  );
}

interface UnitFieldProps<G> {
  readonly what: string;
  readonly units: Readonly<Record<string, string>>;
  readonly headings: readonly string[];
  readonly given: G;
  readonly onGiven: (given: G) => void;
}

/** No unit is called so. */
const AS_COLUMN = "column ";

/** One unit for all, or the column that names each row's. */
function UnitField<G extends { readonly unit: string; readonly unitColumn?: string | null | undefined }>({
  what,
  units,
  headings,
  given,
  onGiven,
}: UnitFieldProps<G>) {
  return (
    <SelectField
      label={`Unit of the ${what}`}
      value={given.unitColumn ? `${AS_COLUMN}${given.unitColumn}` : given.unit}
      onValue={(value) =>
        onGiven(
          value.startsWith(AS_COLUMN)
            ? { ...given, unitColumn: value.slice(AS_COLUMN.length) }
            : { ...given, unit: value, unitColumn: null },
        )
      }
      options={[
        ...Object.entries(units),
        ...headings.map((heading) => [`${AS_COLUMN}${heading}`, `as ${heading} says`] as const),
      ]}
    />
  );
}

interface ConstantProps {
  readonly label: string;
  readonly value: number | null;
  readonly onValue: (value: number | null) => void;
}

function Constant({ label, value, onValue }: ConstantProps) {
  return (
    <TextField
      label={label}
      value={value === null ? "" : String(value)}
      onValue={(text) => onValue(/^\d+$/.test(text.trim()) ? Number(text) : null)}
      isOptional
    />
  );
}
