export { demoClub } from "./club.ts";
export { demoDocument } from "./document.ts";
export { loadDemo } from "./load-demo.ts";
export { type Ask, openDemoNight } from "./open-night.ts";
export { demoPeople } from "./people.ts";
