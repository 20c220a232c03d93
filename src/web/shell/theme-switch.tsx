import { useState } from "preact/hooks";

const THEMES = ["auto", "light", "dark"] as const;
type Theme = (typeof THEMES)[number];

const WORDS = { auto: "Auto", light: "Light", dark: "Dark" } as const satisfies Record<Theme, string>;

function current(): Theme {
  const said = document.documentElement.dataset.theme;
  return THEMES.find((theme) => theme === said) ?? "auto";
}

function use(theme: Theme): void {
  if (theme === "auto") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
  try {
    if (theme === "auto") localStorage.removeItem("theme");
    else localStorage.setItem("theme", theme);
  } catch {
    // storage refused: the choice holds until the page is left
  }
}

/** Light or dark, remembered on this device. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState(current);
  const change = (event: Event) => {
    const wanted = THEMES.find((t) => t === (event.currentTarget as HTMLSelectElement).value) ?? "auto";
    use(wanted);
    setTheme(wanted);
  };
  return (
    <label class="theme-switch">
      <span>Colours</span>
      <select value={theme} onChange={change}>
        {THEMES.map((t) => (
          <option key={t} value={t}>
            {WORDS[t]}
          </option>
        ))}
      </select>
    </label>
  );
}
