import preact from "@preact/preset-vite";
import { defineConfig } from "vite";

// the service started with `npm run dev`
const SERVICE = "http://127.0.0.1:4380";

export default defineConfig({
  root: "src/web",
  plugins: [preact()],
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    // everything stays a file of its own: the content security policy allows no scripts inside pages
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: {
    proxy: Object.fromEntries(
      ["/api", "/problems", "/healthz", "/readyz"].map((prefix) => [prefix, SERVICE]),
    ),
  },
});
