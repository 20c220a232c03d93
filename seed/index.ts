export { demoClub } from "./club.ts";
export { demoDocument } from "./document.ts";
export { loadDemo } from "./load-demo.ts";
