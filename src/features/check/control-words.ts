import type { Words } from "./told.ts";
import { counted, duration, listed, number } from "./wording.ts";

/** What is wrong with handsets and addresses, and with what runs where. */
export const CONTROL_WORDS = {
  "handsets-too-few": (t) => ({
    sentence: `At ${t.at} ${number(t.measured, "handset")} of ${t.thing} ${t.measured === 1 ? "is" : "are"} needed and there ${t.limit === 1 ? "is" : "are"} ${t.limit}: ${counted("train", t.trains, "trains")}.`,
    cure: "Move one of these trains, or borrow a handset.",
  }),
  "handsets-too-many": (t) => ({
    sentence: `At ${t.at} ${number(t.measured, "handset")} of ${t.thing} are in use, and the system takes ${t.limit} at once: ${counted("train", t.trains, "trains")}.`,
    cure: "Move one of these trains.",
  }),
  "handset-none-usable": (t) => ({
    sentence: `No handset of ${t.thing} that is ready can be used at every place where train ${t.trains[0]} calls or passes and lasts that long.`,
    cure: "Fit a socket where it is missing, borrow a radio handset, or send the train another way.",
  }),
  "handsets-do-not-fit": (t) => ({
    sentence: `The handsets of ${t.thing} cannot be shared out among ${counted("train", t.trains, "trains")} from ${t.from} to ${t.to}: ${t.limit} could serve some of these, by where they can be used and how long they last, but no sharing serves them all.`,
    cure: "Move one of these trains, charge or borrow a handset, or fit a socket.",
  }),
  "handsets-not-decided": (t) => ({
    sentence: `Whether the handsets of ${t.thing} can be shared out so that each is in reach and charged for all that it does was not settled: there are too many ways to try.`,
    cure: "Choose handsets for some trains, or add one that is usable everywhere.",
  }),
  "handset-not-ready": (t) => ({
    sentence: `Handset ${t.handsets[0]}, which ${t.members[0] ?? "somebody"} has for train ${t.trains[0]}, is not ready for use.`,
    cure: "Choose another handset for it, or mend it and say so in the records.",
  }),
  "handset-out-of-reach": (t) => ({
    sentence: `Handset ${t.handsets[0]}, which ${t.members[0] ?? "somebody"} has for train ${t.trains[0]}, cannot be used along all of its run.`,
    cure: "Choose another handset for it.",
  }),
  "handset-battery-short": (t) => ({
    sentence: `Handset ${t.handsets[0]} is away for ${duration(t.measured)} from its first pick-up to its last hand-in, and a charge lasts ${duration(t.limit)}: ${counted("train", t.trains, "trains")}.`,
    cure: "Give one of these trains another handset, or one that is fed by its cable.",
  }),
  "address-refused": (t) => ({
    sentence: `Locomotive ${t.stock[0]} answers to address ${t.measured}, and ${t.thing} takes none above ${t.limit} of that kind.`,
    cure: "Give its decoder another address.",
  }),
  "address-used-twice": (t) => ({
    sentence: `Locomotives ${listed(t.stock)} ${t.stock.length > 2 ? "all" : "both"} answer to address ${t.measured} of ${t.thing}: what one is told, ${t.stock.length > 2 ? "all" : "both"} do.`,
    cure:
      t.stock.length > 2
        ? "Let one of them keep it: give each of the others another address, or leave it at home."
        : "Give one of them another address, or leave it at home.",
  }),
  "addresses-too-many": (t) => ({
    sentence: `At ${t.at} ${number(t.measured, "address", "addresses")} of ${t.thing} are in use, and the system drives ${t.limit} at once: ${counted("train", t.trains, "trains")}.`,
    cure: "Move one of these trains.",
  }),
  "analog-only-on-digital": (t) => ({
    sentence: `Locomotive ${t.stock[0]} of train ${t.trains[0]} has no decoder and would run onto digital track at section ${t.sections[0]}, which can burn its motor.`,
    cure: "Give the train a locomotive with a decoder.",
  }),
  "decoder-not-for-analog": (t) => ({
    sentence: `Locomotive ${t.stock[0]} of train ${t.trains[0]} would run onto analog track at section ${t.sections[0]}, which its decoder does not allow.`,
    cure: "Give the train another locomotive, or allow analog running in the decoder (CV29, bit 2) and say so in the roster.",
  }),
} satisfies Words;
