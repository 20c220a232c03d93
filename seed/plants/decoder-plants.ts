import type { Plant } from "./plant.ts";

/** Faults of decoders and of what runs where. */
export const decoderPlants: readonly Plant[] = [
  {
    finding: "analog-only-on-digital",
    adds: [
      {
        code: "8Y15",
        name: "Hawthorn round the yard",
        engines: "V16",
        rakes: "",
        calls: "HD/7:05 HY2/7:15",
        placedAt: "7:02",
        removedAt: "7:18",
      },
    ],
    what: "a visitor's engine without a decoder is put down in the digital yard",
    why: "a motor straight on the digital signal can burn",
    shows: { locomotives: ["V16"] },
  },
  {
    finding: "address-refused",
    adds: [
      {
        code: "8Y16",
        name: "Sallow round the yard",
        engines: "V18",
        rakes: "",
        calls: "HD/11:36 HY2/11:44",
        placedAt: "11:34",
        removedAt: "11:48",
      },
    ],
    what: "a visitor's engine answers to address 10000",
    why: "the club's system takes none above 9999",
    shows: { locomotives: ["V18"], commandSystems: ["club"] },
  },
  {
    finding: "address-used-twice",
    adds: [
      {
        code: "8Y17",
        name: "Alder round the yard",
        engines: "V19",
        rakes: "",
        calls: "HD/7:40 HY2/7:44",
        placedAt: "7:38",
        removedAt: "7:46",
      },
    ],
    what: "a visitor's railcar has the blue diesel's address, 201",
    why: "what one of the two is told, both do",
    shows: { locomotives: ["D201", "V19"], commandSystems: ["club"] },
  },
  {
    finding: "decoder-not-for-analog",
    working: "3B03",
    change: { engines: "V17", placedAt: "10:34" },
    what: "has a visitor's engine instead of its own",
    why: "its decoder does not run on the analog branch",
    shows: { trains: ["3B03"], locomotives: ["V17"] },
  },
];
