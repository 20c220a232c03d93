import { Refusal } from "../../lib/refusal.ts";

const refuse = (detail: string) => new Refusal("validation-failed", detail, [{ pointer: "/body", detail }]);

export const noBytes = () => refuse("There is no picture in the body: send its bytes as they are.");

export const noPictureType = () => refuse("This is no picture that is taken here: send a PNG, JPEG or WebP.");

export const cutOff = () => refuse("The picture breaks off before its end: send the whole file.");

export const noPictureInside = () =>
  refuse("The file is laid out as a picture, but there is none in it: send another.");

export const noPicture = (of: string, code: string) =>
  new Refusal("not-found", `The ${of} ${code} has no picture.`);

export const noRecord = (of: string, code: string) =>
  new Refusal("not-found", `There is no ${of} ${code} in this club.`);
